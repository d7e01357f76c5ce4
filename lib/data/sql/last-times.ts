import type { Tx } from "../in-scope";

export type LastTime = { readonly channel: string; readonly last: Uint8Array };

/** The last eight bytes of each channel's times, block by block: where its readings end so far. */
export const lastTimes = (tx: Tx, runId: string): Promise<LastTime[]> =>
  tx.$queryRaw<LastTime[]>`
    select channel, substring(times from 8 * count - 7 for 8) as last
    from scan_block_channel where run_id = ${runId}::uuid`;
