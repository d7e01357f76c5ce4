import { Path, Svg } from "@react-pdf/renderer";
import { codePath } from "@/lib/drawing/code-path";

/** Light modules on each side that a reader needs to find the code (ISO/IEC 18004: four). */
const quiet = 4;
/** The field of the code with its quiet zone, 20 mm in pt. */
export const codeSide = (20 * 72) / 25.4;
/** Below this, mm, a module is lost in a laser print that was copied once. Common practice, no source. */
const smallestModule = 0.32;

/** Of the content, by its hash: what the page of the address compares it with, without ever sending it (RFC 3986, 3.5). */
export const codeText = (address: string, contentHash: string): string =>
  `${address}#${Buffer.from(contentHash, "hex").toString("base64url")}`;

/** Before anything is rendered: in the middle of it the renderer would drown the reason. */
export const demandReadable = (text: string): void => {
  const module = 20 / (codePath(text).modules + 2 * quiet);
  if (module < smallestModule)
    throw new Error(
      `The address ${text.split("#")[0]} is too long for a code of 20 mm on each page: give the laboratory a shorter public address`,
    );
};

/** Black on white, whatever the inks are. */
export const PageCode = ({ text }: { readonly text: string }) => {
  const { modules, path } = codePath(text);
  const span = modules + 2 * quiet;
  return (
    <Svg width={codeSide} height={codeSide} viewBox={`${-quiet} ${-quiet} ${span} ${span}`}>
      <Path d={path} fill="#000000" />
    </Svg>
  );
};
