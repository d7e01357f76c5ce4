import { loadProcedure } from "@/lib/data/gate/load-procedure";
import { demandRun } from "@/lib/data/run/demand-run";
import { loadRoomInstrument } from "@/lib/data/run/load-room-instrument";
import { canonical } from "@/lib/domain/audit/canonical";
import { eventOf } from "@/lib/domain/audit/define-event";
import { demand } from "@/lib/domain/refusal";
import { decideRoom } from "@/lib/domain/run/decide-room";
import { runEvents } from "@/lib/domain/run/events";
import { outsideLimits, roomFigures } from "@/lib/domain/run/room-figures";
import { roomKind } from "@/lib/domain/run/room-of";
import { RecordRoomInput } from "@/lib/domain/run/schema";
import { personIdOf } from "@/lib/domain/staff/person-id-of";
import { defineOperation } from "../operation";

/**
 * The room at the start or the end of a run, ISO/IEC 17025:2017, 6.3.3 and 7.8.4.1 b. Recorded again, with a
 * reason, the later counts; both stay. Outside the procedure's limits it is stored all the same: it is as it was, and the certificate says so.
 */
export const recordRoom = defineOperation({
  name: "run/record-room",
  permission: "run.perform",
  input: RecordRoomInput,
  perform: async ({ actor, now, tx }, { run: number, moment, instrument: tag, celsius, percent, reason }) => {
    const run = await demandRun(tx, number);
    const instrument = await loadRoomInstrument(tx, tag, run.createdAt, now);
    const of = { runId: run.id, kind: roomKind, channel: moment };
    const isRecorded = (await tx.benchCheck.count({ where: of })) > 0;
    const isCertified = (await tx.certificate.count({ where: { runId: run.id } })) > 0;
    demand(decideRoom(run, { moment, percent, reason }, instrument, { isRecorded, isCertified }));
    const { policy } = await loadProcedure(tx, run.procedureRevisionId);
    const { certificate, findings, id } = instrument;
    if (findings === null || id === null) throw new Error("decided upon without an instrument");
    const figures = roomFigures({ celsius, percent }, { tag, certificate, findings }, policy.room);
    const again = isRecorded ? { reason } : {};
    await tx.benchCheck.create({
      data: {
        ...{ ...of, figures: canonical({ ...figures, ...again }) },
        ...{ checkedById: personIdOf(actor), checkedAt: now },
      },
    });
    // What the run stands on: found to be wrong later, the instrument leads to this run.
    if (run.ambientId !== id) await tx.run.update({ where: { id: run.id }, data: { ambientId: id } });
    const outside = outsideLimits(figures);
    return {
      value: { moment, celsius: figures.celsius, percent: figures.humidity?.percent ?? null, outside },
      events: [
        eventOf(runEvents.roomRecorded, run.id, {
          ...{ run: run.number, moment, instrument: tag, celsius: figures.celsius },
          ...again,
          ...{ percent: figures.humidity?.percent ?? null, outside: outside ?? "" },
        }),
      ],
    };
  },
});
