import type { Fabric } from '../../garment/index.ts';
import type { ReadyBench } from '../station/bench.ts';

/** The cloth it will be made of; for knits, how far it stretches. */
export function FabricChoice({ bench }: { bench: ReadyBench }) {
  const { fabric } = bench.fitting;
  const put = (part: Partial<Fabric>, say: string, merge?: string) =>
    bench.change((f) => ({ ...f, fabric: { ...f.fabric, ...part } }), say, merge);
  const share = (value: number | undefined): string =>
    value === undefined ? '' : String(Math.round(value * 100));
  return (
    <div className="row about">
      <label className="field">
        <span className="label">Cloth</span>
        <input
          type="text"
          value={fabric.name}
          onChange={(e) => put({ name: e.target.value }, 'Named the cloth', 'fabric/name')}
        />
      </label>
      <label className="field">
        <span className="label">Kind</span>
        <select
          value={fabric.kind}
          onChange={(e) => put({ kind: e.target.value as Fabric['kind'] }, `Cloth: ${e.target.value}`)}
        >
          <option value="woven">woven</option>
          <option value="knit">knit</option>
        </select>
      </label>
      {fabric.kind === 'knit' && (
        <label className="field">
          <span className="label">10 cm (4 in) of it stretches by, %</span>
          <input
            type="number"
            min={0}
            max={150}
            step={5}
            value={share(fabric.stretch)}
            onChange={(e) =>
              put(
                { stretch: Number(e.target.value) / 100 },
                `Stretches by ${e.target.value} %`,
                'fabric/stretch',
              )
            }
          />
        </label>
      )}
      <label className="field">
        <span className="label">Shrinks lengthwise, %</span>
        <input
          type="number"
          min={0}
          max={20}
          step={0.5}
          value={fabric.shrinkLength === undefined ? '' : Math.round(fabric.shrinkLength * 1000) / 10}
          onChange={(e) =>
            put(
              { shrinkLength: Number(e.target.value) / 100 },
              `Shrinks ${e.target.value} % lengthwise`,
              'fabric/long',
            )
          }
        />
      </label>
    </div>
  );
}
