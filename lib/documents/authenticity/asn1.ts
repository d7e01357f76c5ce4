import * as asn1js from "asn1js";
import { type Bytes, copyOf } from "./bytes";

/** A value of ASN.1 with the bytes it was read from. */
export type Block = asn1js.BaseBlock & { readonly valueBeforeDecodeView: Uint8Array };

/** Raised where bytes are not what they should be; whoever checks a file turns it into a verdict. */
export class Malformed extends Error {
  constructor(what: string) {
    super(what);
    this.name = "Malformed";
  }
}

/** Exactly one value, to the last byte. */
export const readDer = (bytes: Uint8Array, what: string): Block => {
  const { offset, result } = asn1js.fromBER(copyOf(bytes));
  if (offset !== bytes.length) throw new Malformed(`${what} is not well-formed`);
  return result as Block;
};

/** The length of the value at the start of bytes that may be followed by padding. */
export const derLength = (bytes: Uint8Array): number | undefined => {
  const first = bytes[1];
  if (bytes.length < 2 || first === undefined) return undefined;
  if (first < 0x80) return 2 + first;
  const count = first & 0x7f;
  if (count === 0 || count > 4 || bytes.length < 2 + count) return undefined;
  const length = bytes.subarray(2, 2 + count).reduce((sum, byte) => sum * 256 + byte, 0);
  return 2 + count + length;
};

export const childrenOf = (block: Block | undefined, what: string): readonly Block[] => {
  const value: unknown = (block?.valueBlock as { value?: unknown } | undefined)?.value;
  if (!Array.isArray(value)) throw new Malformed(`${what} is not as it should be`);
  return value as readonly Block[];
};

export const rawOf = (block: Block): Bytes => copyOf(block.valueBeforeDecodeView);

/** The octets that a string of octets holds. */
export const octetsOf = (block: Block | undefined, what: string): Bytes => {
  if (!(block instanceof asn1js.OctetString)) throw new Malformed(`${what} is not a string of octets`);
  return copyOf(block.getValue());
};

export const oidOf = (block: Block | undefined, what: string): string => {
  if (!(block instanceof asn1js.ObjectIdentifier)) throw new Malformed(`${what} has no identifier`);
  return block.valueBlock.toString();
};

/** A tag of the context, [n]. */
export const isContext = (block: Block | undefined, number: number): boolean =>
  block !== undefined && block.idBlock.tagClass === 3 && block.idBlock.tagNumber === number;

export const der = (block: asn1js.BaseBlock): Bytes => copyOf(block.toBER(false));

/** A value again from its bytes, to be built into another one unchanged. */
export const again = (bytes: Uint8Array): asn1js.BaseBlock => readDer(bytes, "a value");
