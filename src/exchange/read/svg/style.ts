import type { Budget } from '../../drawing/budget.ts';
import type { SvgNode } from './tree.ts';

/** The properties that matter to a drawn line; all inherited but `display`. */
const PROPERTIES = [
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'fill',
  'color',
  'display',
  'visibility',
  'font-size',
  'text-anchor',
] as const;
export type Property = (typeof PROPERTIES)[number];
export type Style = Readonly<Partial<Record<Property, string>>>;

interface Simple {
  readonly element: string;
  readonly id: string;
  readonly classes: readonly string[];
}

export interface Rule {
  /** Compound selectors, outermost first; every one but the last must match some ancestor, in order. */
  readonly chain: readonly Simple[];
  readonly weight: number;
  readonly style: Style;
}

/** Reads a style sheet; at-rules (imports, media) are skipped with all they hold. Only element, class, id and descendant selectors are known. */
export function readCss(css: string, budget: Budget): Rule[] {
  const rules: Rule[] = [];
  let text = css.replace(/\/\*[\s\S]*?(\*\/|$)/g, ' ');
  text = skipAtRules(text);
  for (const block of text.split('}')) {
    budget.spend('operations', 1);
    const brace = block.indexOf('{');
    if (brace < 0) continue;
    const style = readDeclarations(block.slice(brace + 1));
    for (const selector of block.slice(0, brace).split(',')) {
      const chain = selector
        .trim()
        .split(/[\s>]+/)
        .filter(Boolean)
        .map(readSimple);
      if (chain.length === 0 || chain.some((part) => part === null)) continue;
      const known = chain as Simple[];
      const weight = known.reduce(
        (sum, s) => sum + (s.id ? 10_000 : 0) + s.classes.length * 100 + (s.element ? 1 : 0),
        0,
      );
      rules.push({ chain: known, weight, style });
    }
  }
  return rules.toSorted((a, b) => a.weight - b.weight);
}

function skipAtRules(text: string): string {
  let out = '';
  let i = 0;
  while (i < text.length) {
    if (text[i] !== '@') {
      out += text[i++];
      continue;
    }
    let depth = 0;
    for (; i < text.length; i++) {
      if (text[i] === '{') depth++;
      else if (text[i] === '}' && --depth <= 0) break;
      else if (text[i] === ';' && depth === 0) break;
    }
    i++;
  }
  return out;
}

function readSimple(text: string): Simple | null {
  const m = /^(\*|[\w-]*)((?:[.#][\w-]+)*)$/.exec(text);
  if (!m) return null;
  const marks = m[2]!.match(/[.#][\w-]+/g) ?? [];
  return {
    element: m[1] === '*' ? '' : m[1]!,
    id: marks.find((mark) => mark.startsWith('#'))?.slice(1) ?? '',
    classes: marks.filter((mark) => mark.startsWith('.')).map((mark) => mark.slice(1)),
  };
}

/** `stroke: red; fill: none` as known properties. */
export function readDeclarations(text: string): Style {
  const style: Partial<Record<Property, string>> = {};
  for (const part of text.split(';')) {
    const colon = part.indexOf(':');
    if (colon < 0) continue;
    const key = part.slice(0, colon).trim().toLowerCase();
    const value = part
      .slice(colon + 1)
      .replace(/!\s*important/i, '')
      .trim();
    if ((PROPERTIES as readonly string[]).includes(key) && value) style[key as Property] = value;
  }
  return style;
}

function matches(simple: Simple, node: SvgNode): boolean {
  if (simple.element && simple.element !== node.name) return false;
  if (simple.id && simple.id !== node.attributes['id']) return false;
  if (simple.classes.length === 0) return true;
  const own = (node.attributes['class'] ?? '').split(/\s+/);
  return simple.classes.every((name) => own.includes(name));
}

/** The style of an element: inherited, attributes, sheet rules by weight, its own `style`. `ancestors` outermost first. */
export function styleOf(
  node: SvgNode,
  inherited: Style,
  ancestors: readonly SvgNode[],
  rules: readonly Rule[],
  budget: Budget,
): Style {
  const style: Partial<Record<Property, string>> = { ...inherited };
  delete style.display;
  for (const key of PROPERTIES) {
    const value = node.attributes[key]?.trim();
    if (value) style[key] = value;
  }
  for (const rule of rules) {
    budget.spend('operations', 1);
    if (!matches(rule.chain.at(-1)!, node)) continue;
    let want = rule.chain.length - 2;
    for (let i = ancestors.length - 1; i >= 0 && want >= 0; i--)
      if (matches(rule.chain[want]!, ancestors[i]!)) want--;
    if (want < 0) Object.assign(style, rule.style);
  }
  if (node.attributes['style']) Object.assign(style, readDeclarations(node.attributes['style']));
  for (const key of PROPERTIES) {
    if (style[key] !== 'inherit') continue;
    if (inherited[key] === undefined) delete style[key];
    else style[key] = inherited[key];
  }
  return style;
}
