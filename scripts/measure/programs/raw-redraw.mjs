/** Redraws a screen of plain lines at each key, with nothing between: the least that a key can take. */
const rows = 24;
let selected = 1;

function draw() {
  const lines = Array.from({ length: rows }, (_, index) => {
    const number = String(index + 1);
    const tag = index + 1 === selected ? `[${number}]` : ` ${number} `;
    return `${tag.padEnd(6)}Oak chest ${number}`.padEnd(80);
  });
  process.stdout.write(`\u001b[H${lines.join('\r\n')}`);
}

process.stdin.setRawMode(true);
process.stdin.on('data', () => {
  selected = (selected % rows) + 1;
  draw();
});
draw();
