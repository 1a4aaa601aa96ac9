import { REFUSAL_WORDS as NO, type Fault } from '../../words/refusal-table.ts';
import { SaxesParser } from 'saxes';
import { ReadError } from '../../drawing/budget.ts';
import type { Budget } from '../../drawing/budget.ts';

/** An element as read: names without their namespace, attributes as written. Text between elements is kept for `text` and `style` only. */
export interface SvgNode {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: (SvgNode | string)[];
}

export interface SvgTree {
  readonly root: SvgNode;
  readonly byId: ReadonlyMap<string, SvgNode>;
  /** All style sheets, in order. */
  readonly css: string;
  /** Where the file first stops being well formed; null when it is. */
  readonly fault: Fault | null;
}

/** Their content is never looked at: it could run, fetch or draw something that is not a line. */
const DEAF = new Set([
  'script',
  'foreignObject',
  'iframe',
  'image',
  'metadata',
  'animate',
  'animateTransform',
  'animateMotion',
  'set',
]);

/**
 * Reads the elements. Document-type declarations and their entities are not expanded, nothing is fetched.
 * Throws ReadError `not-this-format`, `damaged`, `too-deep`, `too-large`.
 */
export function svgTree(text: string, budget: Budget): SvgTree {
  const { name } = budget;
  const byId = new Map<string, SvgNode>();
  let css = '';
  let fault: Fault | null = null;
  let ended = false;
  let root: SvgNode | undefined;
  const open: SvgNode[] = [];
  let deaf = 0;
  const parser = new SaxesParser({ xmlns: false, position: true });
  parser.on('error', () => {
    fault ??= ended ? 'end' : { line: parser.line, column: parser.column };
  });
  parser.on('opentag', (tag) => {
    budget.spend('operations', 1);
    budget.depth(open.length + deaf);
    const local = tag.name.replace(/^.*:/, '');
    if (deaf > 0 || DEAF.has(local)) {
      deaf++;
      return;
    }
    const node: SvgNode = { name: local, attributes: tag.attributes as Record<string, string>, children: [] };
    const { id } = node.attributes;
    if (id !== undefined && !byId.has(id)) byId.set(id, node);
    if (open.length > 0) open.at(-1)!.children.push(node);
    else root ??= node;
    open.push(node);
  });
  parser.on('closetag', () => {
    if (deaf > 0) deaf--;
    else open.pop();
  });
  const words = (value: string): void => {
    const parent = open.at(-1);
    if (deaf > 0 || !parent) return;
    if (parent.name === 'style') css += value;
    else if (parent.name === 'text' || parent.name === 'tspan' || parent.name === 'textPath')
      parent.children.push(value);
  };
  parser.on('text', words);
  parser.on('cdata', words);
  // In slices, so that the clock is looked at between them.
  for (let i = 0; i < text.length; i += 65_536) {
    parser.write(text.slice(i, i + 65_536));
    budget.look();
  }
  ended = true;
  parser.close();
  if (!root) throw new ReadError('not-this-format', name, NO['svg-bare']({ file: name }));
  if (root.name !== 'svg')
    throw new ReadError(
      'not-this-format',
      name,
      NO['svg-other']({ file: name, element: root.name.slice(0, 40) }),
    );
  return { root, byId, css, fault };
}
