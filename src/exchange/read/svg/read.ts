import { REFUSAL_WORDS as NO, type Fault } from '../../words/refusal-table.ts';
import { EVIDENCE_WORDS as SAY } from '../../words/evidence-table.ts';
import { exchangeFinding } from '../../words/words-table.ts';
import type { Finding, Phrase } from '../../../garment/index.ts';
import { affineAfter, affinePath, affineScale } from '../../drawing/affine.ts';
import type { Affine } from '../../drawing/affine.ts';
import { ReadError, openBudget } from '../../drawing/budget.ts';
import type { Budget, ReadOptions } from '../../drawing/budget.ts';
import { clipWith, cutToClip } from '../../drawing/clip.ts';
import type { Clip } from '../../drawing/clip.ts';
import type { Belongs, DrawnLayer, DrawnText, Drawing, Stroke } from '../../drawing/drawing.ts';
import { svgColour } from './colour.ts';
import { shapesOf } from './shape.ts';
import { readCss, styleOf } from './style.ts';
import type { Rule, Style } from './style.ts';
import { svgTree } from './tree.ts';
import type { SvgNode, SvgTree } from './tree.ts';
import { MM_PER_PX, svgLength, svgNumbers, svgPx, svgTransform, viewBoxFit } from './units.ts';
import { textsOf } from './text.ts';

/** What flows down the tree. */
interface Flow {
  readonly matrix: Affine;
  readonly style: Style;
  readonly layer: string;
  readonly belongs: Belongs | undefined;
  readonly clip: Clip | null;
  readonly ancestors: readonly SvgNode[];
  readonly depth: number;
  /** Inside a `use` the drawn thing stays on the layer of its place, not of its source. */
  readonly inUse: boolean;
}

/**
 * Reads the lines and words of an SVG. Scripts, pictures, foreign content, entities and links to outside are ignored and said.
 * Throws ReadError: `empty`, `not-this-format`, `no-lines`, `too-large`, `too-deep`, `too-slow`, `cancelled`.
 */
export function readSvg(bytes: Uint8Array, options: ReadOptions = {}): Drawing {
  const budget = openBudget(bytes.length, options);
  const tree = svgTree(textOf(bytes), budget);
  const rules = readCss(tree.css, budget);
  const size = sheetOf(tree.root);
  const out = {
    strokes: [] as Stroke[],
    texts: [] as DrawnText[],
    layers: new Map<string, DrawnLayer>(),
    ignored: new Set<string>(),
  };
  const start: Affine = affineAfter([MM_PER_PX, 0, 0, -MM_PER_PX, 0, size.height], size.fit);
  const flow: Flow = {
    matrix: start,
    style: {},
    layer: '',
    belongs: undefined,
    clip: null,
    ancestors: [],
    depth: 0,
    inUse: false,
  };
  walkChildren(
    tree.root,
    { ...flow, style: styleOf(tree.root, {}, [], rules, budget) },
    tree,
    rules,
    budget,
    out,
  );
  const { name } = budget;
  if (out.strokes.length === 0) {
    if (tree.fault) throw new ReadError('damaged', name, NO['svg-damaged']({ file: name, at: tree.fault }));
    throw new ReadError('no-lines', name, NO['no-drawn-lines']({ file: name }));
  }
  return {
    format: 'svg',
    name,
    pages: [{ number: 1, width: size.width, height: size.height }],
    strokes: out.strokes,
    texts: out.texts,
    layers: [...out.layers.values()],
    ...structureFrom(tree),
    unitsFrom: size.unitsFrom,
    findings: [...size.findings, ...ignoredFindings(out.ignored, tree.fault, name)],
  };
}

interface Out {
  readonly strokes: Stroke[];
  readonly texts: DrawnText[];
  readonly layers: Map<string, DrawnLayer>;
  readonly ignored: Set<string>;
}

function walkChildren(
  node: SvgNode,
  flow: Flow,
  tree: SvgTree,
  rules: readonly Rule[],
  budget: Budget,
  out: Out,
): void {
  const inner: Flow = { ...flow, ancestors: [...flow.ancestors, node], depth: flow.depth + 1 };
  for (const child of node.children) {
    if (typeof child !== 'string') walk(child, inner, tree, rules, budget, out);
    // Of a switch only the first branch is shown.
    if (node.name === 'switch' && typeof child !== 'string') return;
  }
}

const UNSEEN = new Set([
  'defs',
  'symbol',
  'clipPath',
  'mask',
  'pattern',
  'marker',
  'style',
  'title',
  'desc',
  'linearGradient',
  'radialGradient',
  'filter',
  'namedview',
  'font',
]);

function walk(
  node: SvgNode,
  flow: Flow,
  tree: SvgTree,
  rules: readonly Rule[],
  budget: Budget,
  out: Out,
): void {
  budget.spend('operations', 1);
  budget.depth(flow.depth);
  if (UNSEEN.has(node.name)) return;
  const style = styleOf(node, flow.style, flow.ancestors, rules, budget);
  const named = !flow.inUse && (node.name === 'g' || node.name === 'svg') ? layerNameOf(node) : '';
  const hidden = style.display === 'none';
  // A hidden layer is a size the file's owner switched off: it is read, and said to be hidden.
  if (hidden && !named) return;
  const layer = named || flow.layer;
  if (named && !out.layers.has(named)) out.layers.set(named, { name: named, visible: !hidden });
  const matrix = affineAfter(flow.matrix, svgTransform(node.attributes['transform']));
  const clip = clipOf(node, matrix, flow, tree, budget);
  const belongs = belongsOf(node, flow.belongs);
  const inner: Flow = { ...flow, matrix, style, layer, belongs, clip };
  switch (node.name) {
    case 'g':
    case 'a':
    case 'switch':
      walkChildren(node, inner, tree, rules, budget, out);
      return;
    case 'svg': {
      const width = svgPx(node.attributes['width']);
      const height = svgPx(node.attributes['height']);
      const at: Affine = [1, 0, 0, 1, svgPx(node.attributes['x']), svgPx(node.attributes['y'])];
      const fit = viewBoxFit(
        node.attributes['viewBox'],
        node.attributes['preserveAspectRatio'],
        width,
        height,
      );
      walkChildren(
        node,
        { ...inner, matrix: affineAfter(matrix, affineAfter(at, fit)) },
        tree,
        rules,
        budget,
        out,
      );
      return;
    }
    case 'use':
      walkUse(node, inner, tree, rules, budget, out);
      return;
    case 'text':
      for (const text of textsOf(node, matrix, style, budget)) {
        out.texts.push({ ...text, page: 0, layer, ...(belongs ? { belongs } : {}) });
      }
      return;
    default:
      drawShapes(node, inner, budget, out);
  }
}

function walkUse(
  node: SvgNode,
  flow: Flow,
  tree: SvgTree,
  rules: readonly Rule[],
  budget: Budget,
  out: Out,
): void {
  const href = node.attributes['href'] ?? node.attributes['xlink:href'] ?? '';
  if (!href.startsWith('#')) {
    if (href) out.ignored.add('links to other files');
    return;
  }
  const target = tree.byId.get(href.slice(1));
  // An element may not use one that it stands in.
  if (!target || flow.ancestors.includes(target)) return;
  const at: Affine = [1, 0, 0, 1, svgPx(node.attributes['x']), svgPx(node.attributes['y'])];
  const moved: Flow = {
    ...flow,
    matrix: affineAfter(flow.matrix, at),
    ancestors: [...flow.ancestors, node, target],
    depth: flow.depth + 1,
    inUse: true,
  };
  if (target.name !== 'symbol') {
    walk(target, moved, tree, rules, budget, out);
    return;
  }
  const box = svgNumbers(target.attributes['viewBox']);
  const width = svgPx(node.attributes['width'], box[2] ?? 0);
  const height = svgPx(node.attributes['height'], box[3] ?? 0);
  const fit = viewBoxFit(
    target.attributes['viewBox'],
    target.attributes['preserveAspectRatio'],
    width,
    height,
  );
  const style = styleOf(target, moved.style, moved.ancestors, rules, budget);
  walkChildren(target, { ...moved, style, matrix: affineAfter(moved.matrix, fit) }, tree, rules, budget, out);
}

function drawShapes(node: SvgNode, flow: Flow, budget: Budget, out: Out): void {
  const { style, matrix } = flow;
  if (style.visibility === 'hidden' || style.visibility === 'collapse') return;
  const ink = svgColour(style.color, '#000000') ?? '#000000';
  const line = svgColour(style.stroke, ink);
  const area = svgColour(style.fill ?? 'black', ink);
  if (!line && !area) return;
  const scale = affineScale(matrix);
  const dash = svgNumbers(style['stroke-dasharray']).filter((n) => n >= 0);
  for (const shape of shapesOf(node, budget)) {
    const path = affinePath(matrix, shape.path);
    if (path.some(({ x, y }) => !(Math.abs(x) < 1e7 && Math.abs(y) < 1e7))) continue;
    const runs = flow.clip ? cutToClip(path, flow.clip, shape.closed) : [{ path, whole: true }];
    for (const run of runs) {
      budget.spend('strokes', 1);
      out.strokes.push({
        page: 0,
        path: run.path,
        closed: shape.closed && run.whole,
        colour: line ?? area ?? '#000000',
        width: line ? svgPx(style['stroke-width'], 1) * scale : 0,
        dash: line && dash.some((n) => n > 0) ? dash.map((n) => n * scale) : [],
        layer: flow.layer,
        paint: line && area ? 'both' : line ? 'line' : 'area',
        ...(flow.belongs ? { belongs: flow.belongs } : {}),
      });
    }
  }
}

function clipOf(node: SvgNode, matrix: Affine, flow: Flow, tree: SvgTree, budget: Budget): Clip | null {
  const id = /url\(\s*["']?#([^"')]+)["']?\s*\)/.exec(
    node.attributes['clip-path'] ?? node.attributes['style'] ?? '',
  )?.[1];
  const target =
    id === undefined ||
    !/clip-path/.test(Object.keys(node.attributes).join() + (node.attributes['style'] ?? ''))
      ? undefined
      : tree.byId.get(id);
  if (target?.name !== 'clipPath') return flow.clip;
  const paths = target.children.flatMap((child) =>
    typeof child === 'string'
      ? []
      : shapesOf(child, budget).map((shape) =>
          affinePath(affineAfter(matrix, svgTransform(child.attributes['transform'])), shape.path),
        ),
  );
  return paths.length > 0 ? clipWith(flow.clip, paths) : flow.clip;
}

function belongsOf(node: SvgNode, above: Belongs | undefined): Belongs | undefined {
  const piece = node.attributes['data-piece'];
  const size = node.attributes['data-size'];
  const part = node.attributes['data-part'];
  if (piece === undefined && size === undefined && part === undefined) return above;
  return {
    ...above,
    ...(piece === undefined ? {} : { piece }),
    ...(size === undefined ? {} : { size }),
    ...(part === undefined ? {} : { part }),
  };
}

/** A group's name as its maker gave it: the layer label editors write, else an id that is not a running number. */
function layerNameOf(node: SvgNode): string {
  const a = node.attributes;
  const label = a['inkscape:label'] ?? a['data-name'] ?? a['aria-label'];
  if (label?.trim()) return label.trim();
  const id = a['id']?.trim() ?? '';
  return /^(g|group|surface|svg|use|source|clip|page)?[-_]?\d*$/i.test(id) ? '' : id.replaceAll('_', ' ');
}

function sheetOf(root: SvgNode): {
  width: number;
  height: number;
  fit: Affine;
  unitsFrom: Phrase;
  findings: Finding[];
} {
  const box = svgNumbers(root.attributes['viewBox']);
  const width = svgLength(root.attributes['width']);
  const height = svgLength(root.attributes['height']);
  const w = width?.px ?? box[2] ?? 0;
  const h = height?.px ?? (width && box[2]! > 0 ? (width.px * box[3]!) / box[2]! : (box[3] ?? 0));
  const real = width !== null && !['', 'px', 'em', 'ex'].includes(width.unit);
  return {
    width: w * MM_PER_PX,
    height: h * MM_PER_PX,
    fit: viewBoxFit(root.attributes['viewBox'], root.attributes['preserveAspectRatio'], w, h),
    unitsFrom: SAY['units-of-svg']({ unit: real ? width.unit : null }),
    findings: real ? [] : [exchangeFinding('units-assumed', 'warning', {}, { taken: 'px' })],
  };
}

function ignoredFindings(ignored: ReadonlySet<string>, fault: Fault | null, name: string): Finding[] {
  const findings = [...ignored].map((what) =>
    exchangeFinding('content-ignored', 'note', {}, { file: name, what }),
  );
  if (fault) findings.push(exchangeFinding('file-damaged', 'warning', {}, { file: name, at: fault }));
  return findings;
}

/** Our own files carry what a pattern knows beyond its lines in one attribute. */
function structureFrom(tree: SvgTree): { structure?: unknown } {
  const text = tree.byId.get('pattern-structure')?.attributes['data-structure'];
  if (text === undefined) return {};
  try {
    return { structure: JSON.parse(text) as unknown };
  } catch {
    return { structure: null };
  }
}

function textOf(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  return new TextDecoder('utf-8').decode(bytes);
}
