import type {
  Body,
  ClothNeed,
  Fabric,
  GarmentKind,
  Level,
  MeasureId,
  MovableEdge,
  PlanChoices,
  SizeChart,
} from '../garment/index.ts';

/** Something the body must pass through, or that must pass a part of the body: a neck opening, a closed cuff, a pull-on waist. */
export interface Opening {
  readonly name: string;
  readonly level: Level;
  /** All round, relaxed, mm. */
  readonly finished: number;
  /** What must go through it. */
  readonly passes: MeasureId;
}

/** All that a plan is made from. Lengths in mm. Per-size rows follow the chart's sizes. */
export interface PlanInput {
  readonly body: Body;
  readonly chart: SizeChart;
  readonly fabric: Fabric;
  readonly choices: PlanChoices;
  /** What the pattern is drafted for. */
  readonly cloth: ClothNeed;
  readonly garment: GarmentKind;
  /** Cut edges that may move, by level. Absent when only a chart is known. */
  readonly movable?: Readonly<Record<Level, readonly MovableEdge[]>>;
  /** Seams that share a residual when only a chart is known; 2 (the side seams) when not said. */
  readonly seams?: number;
  /** Finished girths measured from the pieces; they beat the table. */
  readonly measured?: Readonly<Record<Level, readonly number[]>>;
  /** Of those, what lies in front of the side seams. */
  readonly measuredFront?: Readonly<Record<Level, readonly number[]>>;
  /** Level at which the garment ends; what lies below is not compared. */
  readonly endsAt?: Level;
  /** How far below the waist the hem lies, when it ends between waist and hip: it is then judged there. */
  readonly hemDepth?: number;
  readonly openings?: readonly Opening[];
  /** What bust alterations among the steps add at the bust, mm all round; counts where the upper bust chose the size. */
  readonly bustAltered?: number;
  /** Width of the allowance that growth is to come out of (a garment already cut, or a line not to be redrawn). Absent: the new line is drawn. */
  readonly fromAllowance?: number;
}
