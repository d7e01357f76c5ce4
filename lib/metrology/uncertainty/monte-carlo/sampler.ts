import type { RandomStream } from "../../number/random";

/** Writes trials of the result into values[from … to − 1]. Trials are independent of each other. */
export type Sampler = (stream: RandomStream, values: Float64Array, from: number, to: number) => void;

/** Trials made at a time: small enough that they stay in the processor's fast memory while each input is added. */
export const CHUNK = 1024;
