import { t, type CuttingTool, type Phrase } from '../../garment/index.ts';

/** What to mind before cutting; common workshop practice. Local rules and the maker's instructions come first. */
export function cuttingCautions(tool: CuttingTool, synthetic: boolean | null): Phrase[] {
  const out: Phrase[] = [];
  if (tool === 'rotary') {
    out.push(
      t`Rotary blade: close the guard after every cut, cut away from the hand that holds the ruler, and keep the blade out of children’s reach. Collect worn blades in a closed tin.`,
    );
  }
  if (tool === 'knife-plotter') out.push(t`Keep hands, hair and sleeves off the bed while the head moves.`);
  if (tool === 'laser') {
    out.push(
      t`Laser: never leave it while it cuts; keep an extinguisher by it, the cover closed and the fumes drawn off outdoors.`,
    );
    if (synthetic === true) {
      out.push(
        t`This cloth is synthetic: it melts, may flame and gives off harmful fumes. Never cut cloth with vinyl (PVC) or chlorine in it by laser: it gives off hydrogen chloride. Ask the maker of the cloth, and test a scrap.`,
      );
    } else if (synthetic === null) {
      out.push(
        t`Find out what the cloth is made of before it goes under a laser. Vinyl (PVC) must never be cut by laser.`,
      );
    }
  }
  if (tool === 'shears') out.push(t`Keep the shears’ lower blade on the table, and lay them down closed.`);
  return out;
}
