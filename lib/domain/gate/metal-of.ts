import { referenceFunctions } from "@/lib/metrology/thermocouple/reference-functions";
import type { ReferenceType } from "../evidence/schema";

export const isNoble = (type: ReferenceType): boolean => referenceFunctions[type].isNoble;

/** Tungsten-rhenium is neither noble nor what the trade calls base metal. */
export const isBaseMetal = (type: ReferenceType): boolean =>
  !referenceFunctions[type].isNoble && !referenceFunctions[type].isOxidisingInAir;
