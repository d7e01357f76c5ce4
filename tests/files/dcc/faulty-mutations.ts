import type { Draw } from "./draws";
import { holders, interpreted, leaves, local, type Mutation, parentPath, refused } from "./mutant";
import { spliced, type Tag, tagsOf, textIn } from "./xml-source";

/** Elements that every certificate must have where they stand; by their parent, as the schema 3.3.0 says. */
const mandatory: Readonly<Record<string, readonly string[]>> = {
  administrativeData: [
    "dccSoftware",
    "coreData",
    "items",
    "calibrationLaboratory",
    "respPersons",
    "customer",
  ],
  coreData: [
    "countryCodeISO3166_1",
    "mandatoryLangCodeISO639_1",
    "uniqueIdentifier",
    "beginPerformanceDate",
    "endPerformanceDate",
    "performanceLocation",
  ],
  item: ["name", "identifications"],
  calibrationLaboratory: ["contact"],
  customer: ["name", "location"],
  identification: ["issuer", "value"],
  certificate: ["referral", "referralID", "procedure", "value"],
  measurementResult: ["name", "results"],
  result: ["name", "data"],
  real: ["value"],
  realListXMLList: ["valueXMLList", "unitXMLList"],
  expandedMUXMLList: ["valueExpandedMUXMLList", "coverageFactorXMLList", "coverageProbabilityXMLList"],
  expandedUncXMLList: ["uncertaintyXMLList", "coverageFactorXMLList", "coverageProbabilityXMLList"],
};
const required = (text: string): readonly Tag[] =>
  interpreted(text).filter(
    (tag) => tag.parent !== null && mandatory[local(tag.parent)]?.includes(local(tag)),
  );

const renamed = (text: string, tag: Tag, name: string): string =>
  spliced(
    spliced(text, tag.closing + 2, tag.closing + 2 + tag.name.length, name),
    tag.start + 1,
    tag.start + 1 + tag.name.length,
    name,
  );

const numbers =
  /^(?:value|valueXMLList|uncertainty|uncertaintyXMLList|valueExpandedMUXMLList|standardUncXMLList|intervalMinXMLList)$/;
const isNumeric =
  (text: string) =>
  (tag: Tag): boolean =>
    /^[\d\s.+-]+$/.test(textIn(text, tag));

const member = (text: string, tag: Tag, draw: Draw, change: (written: string) => string): string => {
  const all = textIn(text, tag).trim().split(/\s+/);
  const at = draw.below(all.length);
  return spliced(
    text,
    tag.opened,
    tag.closing,
    all.map((written, index) => (index === at ? change(written) : written)).join(" "),
  );
};

export const faultyMutations: Readonly<Record<string, Mutation>> = {
  "a mandatory element is gone": (text, draw) => {
    const tag = draw.of(required(text));
    return refused(spliced(text, tag.start, tag.end, ""), `no ${tag.path}`, ["structure"], [parentPath(tag)]);
  },
  "an element stands twice": (text, draw) => {
    // Languages are a list: only 3.3 refuses one named twice.
    const tag = draw.of(required(text).filter((found) => !/Lang/.test(found.path)));
    const second = tag.path.replace(/\[\d+\]$/, "");
    return refused(
      spliced(text, tag.end, tag.end, text.slice(tag.start, tag.end)),
      `twice ${tag.path}`,
      ["structure", "reference"],
      [`${second}[2]`],
    );
  },
  "an element is misspelt": (text, draw) => {
    const tag = draw.of(
      interpreted(text).filter(({ closing, opened, parent }) => closing > opened && parent !== null),
    );
    const at = tag.name.length - draw.below(Math.min(4, local(tag).length));
    const name = `${tag.name.slice(0, at)}q${tag.name.slice(at)}`;
    return refused(
      renamed(text, tag, name),
      `${tag.path} as ${name}`,
      ["structure"],
      [`${parentPath(tag)}/${name.split(":").at(-1)}`, parentPath(tag)],
    );
  },
  "an element of another namespace": (text, draw) => {
    const tag = draw.of(
      interpreted(text).filter(({ closing, opened, parent }) => closing > opened && parent !== null),
    );
    const name = `x:${local(tag)}`;
    return refused(
      renamed(text, tag, name).replace(/(<[\w:]*digitalCalibrationCertificate)/, '$1 xmlns:x="urn:x"'),
      `${tag.path} as ${name}`,
      ["structure"],
      [tag.path, parentPath(tag)],
    );
  },
  "a letter or a comma in a number": (text, draw) => {
    const tag = draw.of(
      leaves(text, numbers)
        .filter(isNumeric(text))
        .filter(({ path }) => !path.includes("identification")),
    );
    const sign = draw.of([",", "x", "..", "--", "1e"]);
    return refused(
      member(text, tag, draw, (written) =>
        `${written.slice(0, 1)}${sign}${written.slice(1)}`.replace(/1e$/, "1e"),
      ),
      `${sign} in ${tag.path}`,
      ["value"],
      [tag.path],
    );
  },
  "a list has lost or gained a member": (text, draw) => {
    const lists = leaves(text, /XMLList$/).filter(
      (leaf) => textIn(text, leaf).trim().split(/\s+/).length > 1,
    );
    if (lists.length === 0) {
      const real = draw.of(interpreted(text).filter(({ path }) => /\/list\/real\[\d\]$/.test(path)));
      return refused(
        spliced(text, real.end, real.end, text.slice(real.start, real.end)),
        `one more ${real.path}`,
        ["length"],
        [`${real.path.slice(0, real.path.indexOf("/list/real"))}*`],
      );
    }
    const tag = draw.of(lists);
    const all = textIn(text, tag).trim().split(/\s+/);
    const changed = all.length > 2 && draw.below(2) === 0 ? all.slice(1) : [...all, all[0] ?? ""];
    const column = parentPath(tag);
    const quantity = column.slice(0, column.search(/\/(?:hybrid|realListXMLList)/));
    return refused(
      spliced(text, tag.opened, tag.closing, changed.join(" ")),
      `${tag.path} of ${changed.length}`,
      ["length"],
      [tag.path, column, `${quantity}*`],
    );
  },
  "a unit is damaged": (text, draw) => {
    const tag = draw.of(leaves(text, /^(?:unit|unitXMLList|listUnit)$/));
    const written = textIn(text, tag);
    const at = 2 + draw.below(written.length - 2);
    return refused(
      spliced(text, tag.opened, tag.closing, `${written.slice(0, at)}z${written.slice(at)}`),
      `unit of ${tag.path}`,
      ["value"],
      [tag.path],
    );
  },
  "a date that is none": (text, draw) => {
    const tag = draw.of(leaves(text, /Date$/));
    const written = draw.of([
      "2026-13-01",
      "2026-00-10",
      "2025-02-29",
      "2026-04-31",
      "16.09.2026",
      "2026-9-16",
      "tomorrow",
    ]);
    return refused(
      spliced(text, tag.opened, tag.closing, written),
      `${written} in ${tag.path}`,
      ["value"],
      [tag.path],
    );
  },
  "the calibration ends before it begins": (text, draw) => {
    const [begin, end] = [leaves(text, /^beginPerformanceDate$/)[0], leaves(text, /^endPerformanceDate$/)[0]];
    if (!begin || !end) throw new Error("The fixture has no dates.");
    const earlier = `${1950 + draw.below(40)}-01-0${1 + draw.below(9)}`;
    return refused(
      spliced(text, end.opened, end.closing, earlier),
      `end ${earlier}`,
      ["contradiction"],
      [end.path],
    );
  },
  "k or p out of bounds": (text, draw) => {
    const tag = draw.of(leaves(text, /^coverage(?:Factor|Probability)/));
    const written = local(tag).startsWith("coverageFactor")
      ? draw.of(["0", "0.9", "-2", "k=2", "2,0"])
      : draw.of(["95", "1.1", "-0.95", "95%", "0,95"]);
    return refused(
      spliced(text, tag.opened, tag.closing, written),
      `${written} in ${tag.path}`,
      ["value"],
      [tag.path],
    );
  },
  "a reference leads nowhere, or an id stands twice": (text, draw) => {
    const tag = draw.of(
      interpreted(text).filter(
        ({ name }) =>
          /(?:^|:)(?:item|quantity|measuringEquipment|result)$/.test(name) && !/\s(?:id|refId)=/.test(name),
      ),
    );
    const opening = text.slice(tag.start, tag.opened).replace(/ (?:id|refId)="[^"]*"/g, "");
    return refused(
      spliced(text, tag.start, tag.opened, opening.replace(/>$/, ` refId="lost${draw.below(100)}">`)),
      `refId in ${tag.path}`,
      ["reference"],
      [tag.path],
    );
  },
  "text where elements belong": (text, draw) => {
    const tag = draw.of(holders(text));
    return refused(
      spliced(text, tag.opened, tag.opened, draw.of(["x", "see page 2", "0.5"])),
      `text in ${tag.path}`,
      ["structure"],
      [tag.path],
    );
  },
  "the file is cut off, or a bracket is lost": (text, draw) => {
    const tag = draw.of(tagsOf(text));
    if (draw.below(2) === 0)
      return refused(text.slice(0, tag.opened + draw.below(20)), `cut after ${tag.path}`, ["not-xml"], null);
    return refused(spliced(text, tag.opened - 1, tag.opened, ""), `no > in ${tag.path}`, ["not-xml"], null);
  },
};
