import { parse } from 'acorn';

/**
 * Writes out what a chunk gives to others as one plain object. esbuild defines a getter for each name, and each once more
 * when it is copied, and every use of one is a call: 1 ms of a command that reads, 4 ms of one that writes.
 *
 * @param {string} code of a chunk as esbuild splits it, an ES module with at most one list of exports, at its end
 * @returns {string} the same without exports, to be made CommonJS
 */
export function withPlainExports(code) {
  const list = /export\s*\{([^}]*)\};?\s*$/.exec(code);
  if (list === null) return code;
  const changing = namesThatChange(code);
  const fields = (list[1] ?? '').split(',').flatMap((entry) => {
    const [local = '', given = local] = entry.trim().split(/\s+as\s+/);
    if (local === '') return [];
    // Whoever uses a name that gets another value later must see that one.
    return [changing.has(local) ? `get ${given}(){return ${local}}` : `${given}:${local}`];
  });
  const marked = 'Object.defineProperty(module.exports,"__esModule",{value:true});';
  return `${code.slice(0, list.index)}\nmodule.exports={${fields.join(',')}};${marked}`;
}

/**
 * Every name that is assigned to anywhere, other than where it is declared. One that only shares its name with such a
 * variable counts too.
 *
 * @param {string} code
 */
function namesThatChange(code) {
  /** @type {Set<string>} */
  const names = new Set();
  /** @param {unknown} part @param {boolean} assigned */
  const look = (part, assigned) => {
    if (Array.isArray(part)) part.forEach((each) => look(each, assigned));
    if (!isNode(part)) return;
    if (part.type === 'Identifier' && assigned) names.add(String(part.name));
    const target = targets[part.type];
    for (const [field, value] of Object.entries(part)) look(value, assigned || field === target);
  };
  look(parse(code, { ecmaVersion: 'latest', sourceType: 'module' }), false);
  return names;
}

/** Where the node that gives a variable another value names it. @type {Readonly<Record<string, string>>} */
const targets = {
  AssignmentExpression: 'left',
  UpdateExpression: 'argument',
  ForInStatement: 'left',
  ForOfStatement: 'left',
};

/** @param {unknown} part @returns {part is {type: string, name?: unknown}} */
const isNode = (part) => typeof part === 'object' && part !== null && 'type' in part;
