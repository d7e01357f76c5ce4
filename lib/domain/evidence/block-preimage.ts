/** What is hashed of a block of readings (decision 0004); the hash itself is the caller's, who may be a browser. */

/** One channel's readings of one block, as stored. */
export type ChannelBytes = {
  readonly channel: string;
  readonly count: number;
  readonly times: Uint8Array;
  readonly values: Uint8Array;
  readonly polarity: Uint8Array;
  /** 16 random bytes of this channel and block. */
  readonly salt: Uint8Array;
};

// A leaf, a root and a digest of blocks can never be taken for one another.
const leafPrefix = Uint8Array.of(0);
const rootPrefix = Uint8Array.of(1);
const blocksPrefix = Uint8Array.of(2);

const encoder = new TextEncoder();

const int64 = (value: number): Uint8Array => {
  const bytes = new Uint8Array(8);
  new DataView(bytes.buffer).setBigInt64(0, BigInt(value));
  return bytes;
};

/** 00 ‖ salt ‖ length of name ‖ name ‖ count ‖ times ‖ values ‖ polarity, in parts. */
export const leafPreimage = (channel: ChannelBytes): readonly Uint8Array[] => {
  const name = encoder.encode(channel.channel);
  return [
    leafPrefix,
    channel.salt,
    int64(name.byteLength),
    name,
    int64(channel.count),
    channel.times,
    channel.values,
    channel.polarity,
  ];
};

/** 01 ‖ number of leaves ‖ leaves in order. */
export const rootPreimage = (leaves: readonly Uint8Array[]): readonly Uint8Array[] => [
  rootPrefix,
  int64(leaves.length),
  ...leaves,
];

/** 02 ‖ number of blocks ‖ roots by sequence: all readings of a run up to a block. */
export const blocksPreimage = (roots: readonly Uint8Array[]): readonly Uint8Array[] => [
  blocksPrefix,
  int64(roots.length),
  ...roots,
];
