import type { CertificateContent, CertificateSet } from "@/lib/domain/certificate/content";
import { type Said, together } from "../certificate/words";
import { all, el, type Html } from "./html";
import { facts, lines, part, type Spoken } from "./speak";

type Item = CertificateContent["item"];

/** Each item once, however many sets it has. */
export const itemsOf = ({ item, sets }: CertificateContent): readonly Item[] =>
  sets ? [...new Map(sets.map((set) => [set.item.tag, set.item])).values()] : [item];

const period = ({ words }: Spoken, from: string, to: string): Said =>
  from === to ? [from] : words.caption("period", { from, to });

/** Over each table: which item, which set, which run. */
export const setHeading = (page: Spoken, set: CertificateSet): Said => {
  const { caption } = page.words;
  return together(
    " · ",
    together(" ", caption("serialNumber"), [`${set.item.serial} (${set.item.tag})`]),
    caption(`set.${set.kind}`),
    together(" ", caption("run"), [set.run.number]),
    together(" ", caption("measured"), period(page, set.performedFrom, set.performedTo)),
  );
};

const oneItem = (page: Spoken, item: Item): Html => {
  const { caption, sentence } = page.words;
  const { say } = page;
  return facts(page, [
    [caption("serial"), el("strong", {}, item.serial)],
    [caption("identity"), all(item.tag)],
    [caption("type"), all(item.typeLetter)],
    [caption("construction"), say(sentence(item.construction))],
    [caption("material"), item.material ? say(sentence(item.material)) : null],
    [caption("protection"), say(sentence(item.protection))],
    [caption("condition"), say(sentence(item.condition))],
    [caption("checks"), item.checks.length > 0 ? lines(page, item.checks.map(sentence)) : null],
  ]);
};

/** 7.8.2.1 e, g, h, i, j, c: whose, which item, in what condition, when and where. */
export const particulars = (page: Spoken): Html => {
  const { content, words, say } = page;
  const { caption, sentence } = words;
  const { customer, order, laboratory } = content;
  const items = itemsOf(content);
  const received = new Set([content.receivedOn, ...(content.sets ?? []).map((set) => set.receivedOn)]);
  return all(
    part(
      page,
      { caption: caption("customer") },
      lines(page, [[customer.name], ...customer.addressLines.map((one): Said => [one]), [customer.contact]]),
      facts(page, [
        [caption("order"), all(order.number)],
        [caption("purchaseOrder"), order.purchaseOrder ? el("strong", {}, order.purchaseOrder) : null],
      ]),
    ),
    part(
      page,
      { caption: caption(items.length === 1 ? "item" : "items") },
      ...items.map((item) => oneItem(page, item)),
    ),
    part(
      page,
      { caption: caption("dates") },
      facts(page, [
        [caption("received"), all([...received].toSorted().join(", "))],
        [caption("measured"), say(period(page, content.performedFrom, content.performedTo))],
        [caption("issued"), all(content.issuedOn)],
        [caption("place"), say(sentence(laboratory.placeOfPerformance))],
      ]),
    ),
    content.formStatement
      ? part(page, { caption: caption("form") }, lines(page, [sentence(content.formStatement)]))
      : null,
  );
};

const runOf = (page: Spoken, set: Pick<CertificateSet, "run" | "conditions">): Html => {
  const { caption, sentence } = page.words;
  const { run } = set;
  return all(
    facts(page, [
      [caption("run"), all(run.number)],
      [caption("furnace"), all(`${run.furnace}, ${run.configuration}`)],
      [caption("furnacePlace"), all(run.place)],
      [caption("immersion"), run.immersion ? all(run.immersion) : null],
      [caption("junction"), all(`${run.junctionCelsius} °C`)],
    ]),
    lines(page, set.conditions.map(sentence)),
  );
};

/** 7.8.2.1 f and 7.8.4.1 b: the method, the conditions that influence the results, and what heat the item has seen. */
export const methodAndConditions = (page: Spoken): Html => {
  const { content, words } = page;
  const { caption, sentence } = words;
  return all(
    part(
      page,
      { caption: caption("method") },
      lines(page, [sentence(content.method.name), sentence(content.method.description)]),
    ),
    part(
      page,
      { caption: caption("conditions") },
      ...(content.sets
        ? content.sets.map((set) =>
            part(page, { caption: setHeading(page, set), level: 3 }, runOf(page, set)),
          )
        : [runOf(page, content)]),
    ),
    content.thermalHistory
      ? part(page, { caption: caption("thermalHistory") }, lines(page, content.thermalHistory.map(sentence)))
      : null,
  );
};
