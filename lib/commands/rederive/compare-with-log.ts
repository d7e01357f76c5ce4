import { Broken, counted, type Facts, untold } from "./step";

/**
 * The log and the records say the same. `logged` are the facts up to the head at the start: each must have its record.
 * `known` has those of events appended since as well, so that people may go on working meanwhile.
 */
export const compareWithLog = (logged: Facts, known: Facts, recorded: Facts): string => {
  for (const [record, found] of recorded) {
    const said = known.get(record);
    if (said === undefined) throw new Broken(record, "it is there, but the log does not tell of it");
    if (said !== found && said !== untold)
      throw new Broken(record, `the log says ${said}; the record has ${found}`);
  }
  for (const [record, said] of logged)
    if (!recorded.has(record)) throw new Broken(record, `the log tells of it (${said}), but it is not there`);
  return `${counted(recorded.size, "record")} as the log tells`;
};
