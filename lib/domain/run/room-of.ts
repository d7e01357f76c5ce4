import { type RoomFigures, readRoomFigures } from "./room-figures";

type Row = { readonly kind: string; readonly channel: string; readonly figures: string };

/** The bench check by which the room stands beside a run. */
export const roomKind = "ambient";

/** The room of a run: the last that was recorded of its start and of its end, in that order; rows come oldest first. */
export const roomOf = (rows: readonly Row[]): readonly RoomFigures[] => {
  const last = (moment: string) =>
    rows.findLast(({ kind, channel }) => kind === roomKind && channel === moment);
  return [last("start"), last("end")].flatMap((row) => (row ? [readRoomFigures(row.figures)] : []));
};
