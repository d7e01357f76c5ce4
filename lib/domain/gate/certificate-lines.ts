import { type NamedPlace, nameOf } from "./name-of";
import type { StoredRow } from "./stored-outcome";
import { saidOf } from "./subject-words";

type Place = NamedPlace & { readonly kind: string };

/**
 * What was set aside at the gate and stands on the certificate of one sensor (ISO/IEC 17025:2017, 7.8.2.1 n): what
 * was said of it, of the references and instruments, and of the whole run; never of another customer's sensor.
 */
export const certificateLines = (
  rows: readonly StoredRow[],
  places: readonly Place[],
  tag: string,
): readonly string[] =>
  rows.flatMap(({ code, subjects, reason, given, reachesCertificate }) => {
    if (given === null || !reachesCertificate) return [];
    const others = places.filter((place) => place.kind === "sensor" && place.tag !== tag);
    const foreign = new Set(others.map((place) => nameOf(code, place)));
    const own = subjects.filter((subject) => !foreign.has(subject));
    if (subjects.length > 0 && own.length === 0) return [];
    const place = places.find((one) => one.tag === tag);
    // The certificate is this sensor's: of itself it need not be named.
    const self = place ? nameOf(code, place) : tag;
    const named = own.filter((subject) => subject !== self);
    return [`${saidOf(code, named, reason)} Accepted: ${given}`];
  });
