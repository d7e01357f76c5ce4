import type { EvidenceProblem } from "./evaluation";
import type { Evidence } from "./schema";

type Named = { readonly id: string };

/** Every id stands once, and every id that is named is there. */
export function checkIdentities(evidence: Evidence): EvidenceProblem[] {
  return [
    ...duplicates(evidence.sensors, "sensors", "id", (s) => s.id),
    ...duplicates(evidence.references, "references", "id", (r) => r.id),
    ...duplicates(evidence.junctions, "junctions", "id", (j) => j.id),
    ...duplicates(evidence.setpoints, "setpoints", "id", (s) => s.id),
    ...duplicates(evidence.load, "load", "place", (p) => p.place),
    ...duplicates(evidence.load, "load", "channel", (p) => p.channel),
    ...duplicates(evidence.load, "load", "item", (p) =>
      p.item.kind === "shorted" ? null : `${p.item.kind} ${p.item.id}`,
    ),
    ...duplicates(evidence.scans.channels, "scans.channels", "channel", (c) => c.channel),
    ...duplicates(evidence.windows, "windows", "setpoint", (w) => w.setpoint),
    ...duplicates(evidence.states, "states", "sensor", (s) => `${s.sensor} at setpoint ${s.setpoint}`),
    ...unresolvedInLoad(evidence),
    ...notInLoad(evidence),
    ...unresolvedElsewhere(evidence),
  ];
}

function duplicates<Item>(
  items: readonly Item[],
  list: string,
  field: string,
  keyOf: (item: Item) => string | null,
): EvidenceProblem[] {
  const seen = new Map<string, number>();
  return items.flatMap((item, i) => {
    const key = keyOf(item);
    if (key === null) return [];
    const first = seen.get(key);
    if (first === undefined) {
      seen.set(key, i);
      return [];
    }
    return [
      {
        path: `${list}[${i}].${field}`,
        message: `${key} stands already in ${list}[${first}]: name each once.`,
      },
    ];
  });
}

function has(items: readonly Named[], id: string): boolean {
  return items.some((item) => item.id === id);
}

function known(items: readonly Named[]): string {
  return items.map((item) => item.id).join(", ");
}

function unresolvedInLoad(evidence: Evidence): EvidenceProblem[] {
  return evidence.load.flatMap((place, i) => {
    const problems: EvidenceProblem[] = [];
    if (!has(evidence.junctions, place.junction)) {
      problems.push({
        path: `load[${i}].junction`,
        message: `There is no junction ${place.junction}; known: ${known(evidence.junctions)}.`,
      });
    }
    if (place.item.kind === "shorted") return problems;
    const items = place.item.kind === "sensor" ? evidence.sensors : evidence.references;
    if (!has(items, place.item.id)) {
      problems.push({
        path: `load[${i}].item.id`,
        message: `There is no ${place.item.kind} ${place.item.id}; known: ${known(items)}.`,
      });
    }
    return problems;
  });
}

function notInLoad(evidence: Evidence): EvidenceProblem[] {
  const lists = [
    ["sensor", "sensors", evidence.sensors],
    ["reference", "references", evidence.references],
  ] as const;
  const unplaced = lists.flatMap(([kind, list, items]) =>
    items.flatMap(({ id }, i) => {
      const isPlaced = evidence.load.some((p) => p.item.kind === kind && p.item.id === id);
      return isPlaced
        ? []
        : [
            {
              path: `${list}[${i}].id`,
              message: `${kind} ${id} has no place in the load: give it one or leave it out.`,
            },
          ];
    }),
  );
  const stray = evidence.scans.channels.flatMap(({ channel }, i) =>
    evidence.load.some((p) => p.channel === channel)
      ? []
      : [
          {
            path: `scans.channels[${i}].channel`,
            message: `Channel ${channel} is not in the load: name what is connected to it, or leave the channel out.`,
          },
        ],
  );
  return [...unplaced, ...stray];
}

function unresolvedElsewhere(evidence: Evidence): EvidenceProblem[] {
  const noSetpoint = (path: string, id: string): EvidenceProblem[] =>
    has(evidence.setpoints, id)
      ? []
      : [{ path, message: `There is no setpoint ${id}; known: ${known(evidence.setpoints)}.` }];
  return [
    ...evidence.windows.flatMap((w, i) => noSetpoint(`windows[${i}].setpoint`, w.setpoint)),
    ...evidence.states.flatMap((s, i) => [
      ...noSetpoint(`states[${i}].setpoint`, s.setpoint),
      ...(has(evidence.sensors, s.sensor)
        ? []
        : [
            {
              path: `states[${i}].sensor`,
              message: `There is no sensor ${s.sensor}; known: ${known(evidence.sensors)}.`,
            },
          ]),
    ]),
  ];
}
