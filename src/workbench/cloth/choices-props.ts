import type { Cloth } from '../../garment/index.ts';
import type { LaySettings } from './lay-settings.ts';

/** What every part of the choices about a cloth is given. */
export interface ChoicesProps {
  readonly cloth: Cloth;
  readonly settings: LaySettings;
  readonly show: 'in' | 'cm';
  readonly put: (part: Partial<LaySettings>, say: string, merge?: string) => void;
}
