/**
 * What may be set aside only at the price of the scope: a sensor too short for the immersion at which the furnace was
 * characterised is measured all the same, and each of its points marked as outside.
 */
export const outsideScopeCodes: ReadonlySet<string> = new Set(["short-sensor"]);
