import { type RoomFigures, readRoomFigures } from "./room-figures";

type Row = { readonly kind: string; readonly channel: string; readonly figures: string };

/** The bench check by which the room stands beside a run. */
export const roomKind = "ambient";

/** Moments of which the room was recorded more than once, with how often and the last reason. */
export const roomRecordedAgain = (
  rows: readonly Row[],
): readonly { readonly moment: string; readonly times: number; readonly reason: string }[] =>
  ["start", "end"].flatMap((moment) => {
    const own = rows.filter(({ kind, channel }) => kind === roomKind && channel === moment);
    const last = own.at(-1);
    if (!last || own.length === 1) return [];
    return [{ moment, times: own.length, reason: readRoomFigures(last.figures).reason ?? "" }];
  });

/** Why it was recorded is the run's: a certificate states the room alone. */
const withoutReason = ({ reason: _, ...figures }: RoomFigures): RoomFigures => figures;

/** The room of a run: the last that was recorded of its start and of its end, in that order; rows come oldest first. */
export const roomOf = (rows: readonly Row[]): readonly RoomFigures[] => {
  const last = (moment: string) =>
    rows.findLast(({ kind, channel }) => kind === roomKind && channel === moment);
  return [last("start"), last("end")].flatMap((row) =>
    row ? [withoutReason(readRoomFigures(row.figures))] : [],
  );
};
