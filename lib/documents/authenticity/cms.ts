import * as asn1js from "asn1js";
import {
  again,
  type Block,
  childrenOf,
  der,
  isContext,
  Malformed,
  octetsOf,
  oidOf,
  rawOf,
  readDer,
} from "./asn1";
import type { Bytes } from "./bytes";
import { oid } from "./identifiers";

export type Attribute = { readonly type: string /** DER of its one value. */; readonly value: Bytes };

/** One signature over something, RFC 5652, as far as seals and timestamps use it: one signer, named by its certificate. */
export type Cms = {
  readonly contentType: string;
  /** What is signed, where it lies inside; null where it lies elsewhere (the PDF). */
  readonly content: Bytes | null;
  /** DER. */
  readonly certificates: readonly Bytes[];
  /** DER of issuer and serial number. */
  readonly signerId: Bytes;
  readonly digestAlgorithm: string;
  readonly signedAttributes: readonly Attribute[];
  /** DER of the whole algorithm identifier. */
  readonly signatureAlgorithm: Bytes;
  readonly signature: Bytes;
  readonly unsignedAttributes: readonly Attribute[];
};

const sequence = (...value: asn1js.BaseBlock[]) => new asn1js.Sequence({ value });
const set = (...value: asn1js.BaseBlock[]) => new asn1js.Set({ value });
const identifier = (value: string) => new asn1js.ObjectIdentifier({ value });
const context = (tagNumber: number, value: asn1js.BaseBlock[]) =>
  new asn1js.Constructed({ idBlock: { tagClass: 3, tagNumber }, value });

const attributeBlock = ({ type, value }: Attribute) => sequence(identifier(type), set(again(value)));

/** DER asks that the members of a set stand in the order of their bytes (X.690, 11.6). */
const inOrder = (attributes: readonly Attribute[]): asn1js.BaseBlock[] =>
  attributes
    .map((attribute) => der(attributeBlock(attribute)))
    .sort(compareBytes)
    .map(again);

function compareBytes(one: Bytes, other: Bytes): number {
  const at = one.findIndex((byte, index) => byte !== other[index]);
  return at === -1 ? one.length - other.length : (one[at] ?? 0) - (other[at] ?? -1);
}

/** What is signed: the attributes as a SET, RFC 5652, 5.4. */
export const signedBytes = (attributes: readonly Attribute[]): Bytes => der(set(...inOrder(attributes)));

/** The one way to write it. A container that does not come out the same was not written by us. */
export const composeCms = (cms: Cms): Bytes => {
  const digest = sequence(identifier(cms.digestAlgorithm));
  const content =
    cms.content === null ? [] : [context(0, [new asn1js.OctetString({ valueHex: cms.content })])];
  const unsigned = cms.unsignedAttributes.length > 0 ? [context(1, inOrder(cms.unsignedAttributes))] : [];
  const signer = sequence(
    new asn1js.Integer({ value: 1 }),
    again(cms.signerId),
    digest,
    context(0, inOrder(cms.signedAttributes)),
    again(cms.signatureAlgorithm),
    new asn1js.OctetString({ valueHex: cms.signature }),
    ...unsigned,
  );
  const signedData = sequence(
    // RFC 5652, 5.1: 3 where what is signed is not plain data.
    new asn1js.Integer({ value: cms.contentType === oid.data ? 1 : 3 }),
    set(digest),
    sequence(identifier(cms.contentType), ...content),
    context(0, cms.certificates.map(again)),
    set(signer),
  );
  return der(sequence(identifier(oid.signedData), context(0, [signedData])));
};

/** Throws `Malformed` where it is not one signature by one signer. */
export const readCms = (bytes: Uint8Array, what: string): Cms => {
  const [type, wrapped] = childrenOf(readDer(bytes, what), what);
  if (oidOf(type, what) !== oid.signedData) throw new Malformed(`${what} holds no signature`);
  const [, , encapsulated, ...rest] = childrenOf(childrenOf(wrapped, what)[0], what);
  const certificates = rest
    .filter((block) => isContext(block, 0))
    .flatMap((block) => childrenOf(block, what));
  const signers = childrenOf(rest.at(-1), what);
  const [signer] = signers;
  if (signer === undefined || signers.length !== 1) throw new Malformed(`${what} has not one signer`);
  const [contentType, content] = childrenOf(encapsulated, what);
  return {
    contentType: oidOf(contentType, what),
    content: content === undefined ? null : octetsOf(childrenOf(content, what)[0], what),
    certificates: certificates.map(rawOf),
    ...readSigner(signer, what),
  };
};

function readSigner(signer: Block, what: string) {
  const [, id, digest, signed, algorithm, signature, unsigned] = childrenOf(signer, what);
  if (id === undefined || algorithm === undefined || !isContext(signed, 0))
    throw new Malformed(`${what} does not say what was signed`);
  return {
    signerId: rawOf(id),
    digestAlgorithm: oidOf(childrenOf(digest, what)[0], what),
    signedAttributes: attributesOf(signed, what),
    signatureAlgorithm: rawOf(algorithm),
    signature: octetsOf(signature, what),
    unsignedAttributes: unsigned === undefined ? [] : attributesOf(unsigned, what),
  };
}

function attributesOf(block: Block | undefined, what: string): readonly Attribute[] {
  return childrenOf(block, what).map((attribute) => {
    const [type, values] = childrenOf(attribute, what);
    const [value, ...more] = childrenOf(values, what);
    if (value === undefined || more.length > 0)
      throw new Malformed(`${what} has an attribute without one value`);
    return { type: oidOf(type, what), value: rawOf(value) };
  });
}

/** undefined where there is none; more than one is malformed (RFC 5652, 11). */
export const attributeOf = (attributes: readonly Attribute[], type: string): Bytes | undefined => {
  const found = attributes.filter((attribute) => attribute.type === type);
  if (found.length > 1) throw new Malformed("a signature says one thing twice");
  return found[0]?.value;
};
