import type { ReactNode } from 'react';
import type { Body } from '../../garment/index.ts';
import { bodyOutline } from './body-outline.ts';
import { bodyShape, type BodyShape } from './body-shape.ts';

export interface FigureProps {
  readonly body: Body;
  readonly label: string;
  /** What lies over the figure: tape, garment. Given the shape so that it lies right. */
  readonly over?: (shape: BodyShape) => ReactNode;
  readonly under?: (shape: BodyShape) => ReactNode;
  /** Part of the figure to show, as heights in mm from the crown; all of it when absent. */
  readonly crop?: (shape: BodyShape) => { from: number; to: number };
  readonly className?: string;
  /** Handles lie over it: then it is a group of things, not one picture. */
  readonly handles?: boolean;
}

/** A person in their own proportions, in chalk: no face, no pose, nothing to compare oneself with. */
export function Figure({ body, label, over, under, crop, className, handles }: FigureProps) {
  const shape = bodyShape(body);
  const drawn = bodyOutline(shape);
  const { from, to } = crop?.(shape) ?? { from: -30, to: shape.stature + 30 };
  const half = Math.max(shape.points.wrist.x + 90, (to - from) * 0.26);
  return (
    <svg
      className={`figure ${className ?? ''}`}
      viewBox={`${-half} ${from} ${half * 2} ${to - from}`}
      {...(label ? { role: handles ? 'group' : 'img', 'aria-label': label } : { 'aria-hidden': true })}
    >
      {under?.(shape)}
      <g className="body">
        {drawn.arms.map((d) => (
          <path key={d.slice(0, 12)} d={d} />
        ))}
        <path d={drawn.trunk} />
        <path d={drawn.head} />
      </g>
      {over?.(shape)}
    </svg>
  );
}
