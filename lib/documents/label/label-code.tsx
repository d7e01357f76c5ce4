import { Path, Svg } from "@react-pdf/renderer";
import { codePath } from "@/lib/drawing/code-path";

/** Light modules on each side that a reader needs to find the code (ISO/IEC 18004: four). */
const quiet = 4;
/** A label printer's dot at 203 dpi is an eighth of a millimetre; a module of whole dots prints without ragged edges. */
const dotMillimetre = 25.4 / 203;
const fewestDots = 3;
const room = 19.5;

export const pointsOf = (millimetre: number): number => (millimetre * 72) / 25.4;

/** Side of the code with its quiet zone, in millimetres, or null where the text is too long for this label. */
export const codeSide = (modules: number): number | null => {
  const dots = Math.floor(room / dotMillimetre / (modules + 2 * quiet));
  return dots < fewestDots ? null : dots * dotMillimetre * (modules + 2 * quiet);
};

/** Before anything is rendered: in the middle of it the renderer would drown the reason. */
export const demandReadable = (address: string): void => {
  if (codeSide(codePath(address).modules) === null)
    throw new Error(`The address ${address} is too long to be read from a label of 50 by 25 mm`);
};

export const LabelCode = ({ text }: { readonly text: string }) => {
  const { modules, path } = codePath(text);
  const side = pointsOf(codeSide(modules) ?? room);
  const span = modules + 2 * quiet;
  return (
    <Svg width={side} height={side} viewBox={`${-quiet} ${-quiet} ${span} ${span}`}>
      <Path d={path} fill="#000000" />
    </Svg>
  );
};
