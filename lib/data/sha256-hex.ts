import { hex } from "./hex";
import { sha256 } from "./sha256";

/** Of a text in UTF-8: lower-case hex. */
export const sha256Hex = (text: string): string => hex(sha256(new TextEncoder().encode(text)));
