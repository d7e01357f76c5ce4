import { type MeasuredSets, readLineOptions } from "../order/options";

/** Which sets a line as stored asks for. */
export const asMeasuredSets = (storedOptions: string): MeasuredSets => readLineOptions(storedOptions).sets;
