import type { DccCertificate, DccPlace } from "../calibration/dcc-certificate";
import { finding, type IssuedFinding } from "./issued-finding";
import { definedNamespaces, own, ownNamespace, ownTerms } from "./terms";

type Termed = { readonly refTypes: readonly string[]; readonly place: DccPlace };

const isTermed = (value: object): value is Termed => "refTypes" in value && "place" in value;

function* termed(value: unknown): Generator<Termed> {
  if (typeof value !== "object" || value === null) return;
  if (isTermed(value)) yield value;
  for (const inner of Object.values(value)) yield* termed(inner);
}

const known: ReadonlySet<string> = new Set((Object.keys(ownTerms) as (keyof typeof ownTerms)[]).map(own));

const isDefined = (refType: string): boolean => {
  const namespace = refType.split("_")[0] ?? "";
  return definedNamespaces.includes(namespace) && (namespace !== ownNamespace || known.has(refType));
};

/** A term is of a vocabulary that the file names, and one of ours is among those whose meaning it states. */
export const checkTerms = (certificate: DccCertificate): readonly IssuedFinding[] =>
  [...termed(certificate)].flatMap(({ refTypes, place }) =>
    refTypes
      .filter((refType) => !isDefined(refType))
      .map((refType) =>
        finding("7.8.1.2", `The term ${refType} is of no vocabulary that the certificate names.`, place),
      ),
  );
