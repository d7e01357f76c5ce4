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

/** Null: a reader finds its modules. Asked before a signature, and again before anything is rendered. */
export const unreadableBecause = (text: string): string | null =>
  20 / (codePath(text).modules + 2 * quiet) < smallestModule
    ? `The address ${text.split("#")[0]} is too long for a code of 20 mm on each page: give the laboratory a shorter public address`
    : null;

/** In the middle of the rendering the renderer would drown the reason. */
export const demandReadable = (text: string): void => {
  const reason = unreadableBecause(text);
  if (reason !== null) throw new Error(reason);
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
