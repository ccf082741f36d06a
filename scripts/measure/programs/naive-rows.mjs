/**
 * A bench as one writes it first with Ink: every row a box of texts, the whole tree drawn each second. It stands for
 * what the program's own drawing is measured against.
 */
import { Box, Text, render } from 'ink';
import { createElement as element, useEffect, useState } from 'react';

const rows = Number(process.argv[2] ?? 60);
const began = Date.now();

/** @param {number} seconds */
function leftWords(seconds) {
  const two = (/** @type {number} */ part) => String(part).padStart(2, '0');
  return `${Math.floor(seconds / 3600)}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
}

/** @param {{number: number, now: number}} props */
function Row({ number, now }) {
  const left = 4000 + number * 77 - Math.floor((now - began) / 1000);
  return element(
    Box,
    null,
    element(Box, { width: 5 }, element(Text, { bold: true }, ` ${number} `)),
    element(Box, { width: 20 }, element(Text, null, `Oak chest ${number}`)),
    element(Box, { width: 20 }, element(Text, { color: 'cyan' }, 'drying, try it at')),
    element(Box, { width: 8 }, element(Text, null, '14:32')),
    element(Box, { width: 10 }, element(Text, { color: 'yellow' }, leftWords(left))),
  );
}

function Bench() {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), 1000);
    return () => clearInterval(timer);
  }, []);
  return element(
    Box,
    { flexDirection: 'column' },
    Array.from({ length: rows }, (_, index) =>
      element(Row, { key: index, number: index + 1, now }),
    ),
  );
}

render(element(Bench), { alternateScreen: true, interactive: true });
