import type { Tx } from "@/lib/data/in-scope";
import { dueThingRows } from "@/lib/data/sql/due-things";
import { isoDay } from "@/lib/domain/calibration/due";
import type { DueKind, DueThing, ReminderStage } from "@/lib/domain/reminder/types";

/** Everything that has a due day as of a day, the earliest first. */
export const loadDueThings = async (tx: Tx, today: string): Promise<readonly DueThing[]> =>
  (await dueThingRows(tx, new Date(`${today}T00:00:00Z`))).map((row) => ({
    dueKind: row.due_kind as DueKind,
    subjectId: row.subject_id,
    title: row.title,
    dueOn: isoDay(row.due_on),
    path: `/${row.due_kind === "characterisation" ? "furnaces" : "standards"}/${row.page_id}`,
    told: row.told as readonly ReminderStage[],
  }));
