export const hitKinds = [
  "sensor",
  "order",
  "certificate",
  "customer",
  "run",
  "equipment",
  "nonconformity",
  "paper",
] as const;
export type HitKind = (typeof hitKinds)[number];

export const hitKindLabels: Readonly<Record<HitKind, string>> = {
  sensor: "Sensors",
  order: "Orders",
  certificate: "Certificates",
  customer: "Customers",
  run: "Runs",
  equipment: "Equipment",
  nonconformity: "Nonconforming work and complaints",
  paper: "Quotations and shipments",
};

export type Hit = {
  readonly kind: HitKind;
  readonly key: string;
  readonly label: string;
  readonly detail: string;
  readonly state: string;
  /** 0: it is this; 1: it begins so; 2: it ends so, or has it somewhere. */
  readonly rank: number;
};

export type HitGroup = {
  readonly kind: HitKind;
  readonly hits: readonly Hit[];
  /** There are more of this kind than are shown. */
  readonly more: boolean;
};

const shown = 8;

/** Each thing once, by its best way of being found. */
const onceEach = (hits: readonly Hit[]): readonly Hit[] => {
  const best = new Map<string, Hit>();
  for (const hit of hits) {
    const name = `${hit.kind} ${hit.label} ${hit.key}`;
    const known = best.get(name);
    if (known === undefined || hit.rank < known.rank) best.set(name, hit);
  }
  return [...best.values()];
};

const lowest = (hits: readonly Hit[]): number => Math.min(...hits.map(({ rank }) => rank));

/** By kind, exact hits first: within a kind, and the kind with an exact hit before the others. */
export const groupHits = (found: readonly Hit[]): readonly HitGroup[] => {
  const hits = onceEach(found);
  const groups = hitKinds.flatMap((kind): HitGroup[] => {
    const own = hits
      .filter((hit) => hit.kind === kind)
      .sort((a, b) => a.rank - b.rank || (a.label < b.label ? 1 : -1));
    return own.length === 0 ? [] : [{ kind, hits: own.slice(0, shown), more: own.length > shown }];
  });
  const isExact = (group: HitGroup): number => (lowest(group.hits) === 0 ? 0 : 1);
  return [...groups].sort((a, b) => isExact(a) - isExact(b));
};

/** Where a hit's page is. */
export const hitAddress = ({ kind, key }: Pick<Hit, "kind" | "key">): string => {
  const name = encodeURIComponent(key);
  switch (kind) {
    case "sensor":
      return `/sensors/${name}`;
    case "order":
    case "paper":
      return `/orders/${name}`;
    case "certificate":
      return `/certificates/${name}`;
    case "customer":
      return `/customers/${name}`;
    case "run":
      return `/runs/${name}`;
    case "nonconformity":
      return `/quality/${name}`;
    case "equipment":
      return key.endsWith(" furnace")
        ? `/furnaces/${key.slice(0, -" furnace".length)}`
        : `/standards/${name}`;
  }
};

/** Where the whole list of a kind is, with the same words; null = the page has no such filter. */
export const listAddress = (kind: HitKind, text: string): string | null => {
  const words = encodeURIComponent(text);
  switch (kind) {
    case "sensor":
      return `/sensors?show=all&find=${words}`;
    case "order":
      return `/orders?show=all&q=${words}`;
    case "certificate":
      return `/certificates?q=${words}`;
    case "customer":
      return `/customers?find=${words}`;
    default:
      return null;
  }
};
