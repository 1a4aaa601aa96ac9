import type { Cloth, LaySettings } from '../../garment/index.ts';

/** What every part of the choices about a cloth is given. */
export interface ChoicesProps {
  readonly cloth: Cloth;
  readonly settings: LaySettings;
  readonly show: 'in' | 'cm';
  readonly put: (part: Partial<LaySettings>, say: string, merge?: string) => void;
}
