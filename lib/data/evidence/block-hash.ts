import { sha256 } from "@/lib/data/sha256";
import { sameBytes } from "@/lib/domain/audit/chain";
import {
  blocksPreimage,
  type ChannelBytes,
  leafPreimage,
  rootPreimage,
} from "@/lib/domain/evidence/block-preimage";

export const saltLength = 16;
export const leafLength = 32;

/** SHA-256(00 ‖ salt ‖ length of name ‖ name ‖ count ‖ times ‖ values ‖ polarity); see decision 0004. */
export const leafOf = (channel: ChannelBytes): Uint8Array<ArrayBuffer> => sha256(...leafPreimage(channel));

/** SHA-256(01 ‖ number of leaves ‖ leaves in order). */
export const rootOf = (leaves: readonly Uint8Array[]): Uint8Array<ArrayBuffer> =>
  sha256(...rootPreimage(leaves));

/** SHA-256(02 ‖ number of blocks ‖ roots by sequence): all readings of a run up to a block, in 32 bytes. */
export const digestOfRoots = (roots: readonly Uint8Array[]): Uint8Array<ArrayBuffer> =>
  sha256(...blocksPreimage(roots));

export const joinLeaves = (leaves: readonly Uint8Array[]): Uint8Array<ArrayBuffer> => {
  const joined = new Uint8Array(leaves.length * leafLength);
  for (const [index, leaf] of leaves.entries()) joined.set(leaf, index * leafLength);
  return joined;
};

export const splitLeaves = (joined: Uint8Array): readonly Uint8Array[] =>
  Array.from({ length: joined.byteLength / leafLength }, (_, index) =>
    joined.subarray(index * leafLength, (index + 1) * leafLength),
  );

/**
 * Whether these readings are the block's at that place, seen from one channel and the leaves alone: what a customer
 * can check without the readings of anybody else.
 */
export const provesChannel = (
  block: { readonly leaves: Uint8Array; readonly root: Uint8Array },
  ordinal: number,
  channel: ChannelBytes,
): boolean => {
  const leaves = splitLeaves(block.leaves);
  const leaf = leaves[ordinal];
  return leaf !== undefined && sameBytes(leafOf(channel), leaf) && sameBytes(rootOf(leaves), block.root);
};
