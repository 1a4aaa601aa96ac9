import type { NestedPiece } from '../../garment/index.ts';
import { pathD } from '../drawing/path-d.ts';
import type { Camera, Frame } from './camera.ts';
import type { Slot } from './arrange.ts';

const drawn = new WeakMap<NestedPiece, Path2D>();

/** All printed sizes of a piece as one path, in its own coordinates. */
function nestPath(piece: NestedPiece): Path2D {
  const had = drawn.get(piece);
  if (had) return had;
  const path = new Path2D();
  for (const edge of piece.edges) for (const one of edge.path) path.addPath(new Path2D(pathD(one)));
  drawn.set(piece, path);
  return path;
}

/**
 * The faint sizes on a canvas behind the pieces. While the view moves, the last picture is moved with it and redrawn when the hand
 * rests or has gone too far: sixty pieces in fifteen sizes are some twenty thousand curves.
 */
export class NestCanvas {
  readonly #canvas: HTMLCanvasElement;
  #pictured: Camera | null = null;
  #timer = 0;

  constructor(canvas: HTMLCanvasElement) {
    this.#canvas = canvas;
  }

  /** Draws, or moves what is drawn. `fresh`: something other than the view has changed. */
  show(
    pieces: readonly { readonly piece: NestedPiece; readonly slot: Slot }[],
    camera: Camera,
    frame: Frame,
    fresh: boolean,
  ): void {
    clearTimeout(this.#timer);
    const was = this.#pictured;
    if (!was || fresh) {
      this.#draw(pieces, camera, frame);
      return;
    }
    const by = camera.k / was.k;
    const dx = (was.x - camera.x) * camera.k;
    const dy = (camera.y - was.y) * camera.k;
    this.#canvas.style.transform = `translate(${dx}px, ${dy}px) scale(${by})`;
    this.#timer = window.setTimeout(() => this.#draw(pieces, camera, frame), 120);
  }

  #draw(
    pieces: readonly { readonly piece: NestedPiece; readonly slot: Slot }[],
    camera: Camera,
    frame: Frame,
  ): void {
    const canvas = this.#canvas;
    const dense = Math.min(2, devicePixelRatio || 1);
    const [w, h] = [Math.round(frame.width * dense), Math.round(frame.height * dense)];
    if (canvas.width !== w || canvas.height !== h) {
      canvas.width = w;
      canvas.height = h;
    }
    canvas.style.transform = '';
    const pen = canvas.getContext('2d');
    if (!pen) return;
    pen.setTransform(1, 0, 0, 1, 0, 0);
    pen.clearRect(0, 0, w, h);
    pen.strokeStyle = getComputedStyle(canvas).color;
    const k = camera.k * dense;
    pen.lineWidth = 0.8 / camera.k;
    for (const { piece, slot } of pieces) {
      const left = (slot.box.minX - camera.x) * camera.k;
      const top = (camera.y - slot.box.maxY) * camera.k;
      const wide = (slot.box.maxX - slot.box.minX) * camera.k;
      const high = (slot.box.maxY - slot.box.minY) * camera.k;
      if (left > frame.width || top > frame.height || left + wide < 0 || top + high < 0) continue;
      pen.setTransform(k, 0, 0, -k, (slot.dx - camera.x) * k, (camera.y - slot.dy) * k);
      pen.stroke(nestPath(piece));
    }
    this.#pictured = camera;
  }

  stop(): void {
    clearTimeout(this.#timer);
  }
}
