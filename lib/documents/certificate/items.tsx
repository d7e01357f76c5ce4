import { View } from "@react-pdf/renderer";
import type { CertificateContent } from "@/lib/domain/certificate/content";
import { Facts } from "./facts";
import type { OnPaper, Paper } from "./paper";
import { Say } from "./say";
import { type Column, Table } from "./table";
import { type Said, together, type Words } from "./words";

type Item = CertificateContent["item"];

/** Each item once, however many sets it has. */
export const itemsOf = ({ item, sets }: CertificateContent): readonly Item[] =>
  sets ? [...new Map(sets.map((set) => [set.item.tag, set.item])).values()] : [item];

/** What the document is about, in one line under its title. */
export const headline = ({ content, words }: Paper): Said => {
  const items = itemsOf(content);
  const type = content.item.typeLetter;
  return items.length === 1
    ? together(", ", words.caption("thermocoupleType", { type }), [content.item.serial])
    : words.caption("thermocouplesType", { type, count: String(items.length) });
};

const checksSaid = ({ checks }: Item, words: Words): Said => together(" · ", ...checks.map(words.sentence));

/** Of one item: all of it, in words. */
export const OneItem = ({ paper: { content, words } }: OnPaper) => {
  const { item } = content;
  return (
    <>
      <Facts
        of={[
          [words.caption("serial"), [item.serial], "strong"],
          [words.caption("identity"), [item.tag]],
          [words.caption("type"), [item.typeLetter]],
        ]}
      />
      <Say said={words.sentence(item.construction)} />
      {item.material ? <Say said={words.sentence(item.material)} /> : null}
      <Facts
        of={[
          [words.caption("protection"), words.sentence(item.protection)],
          [words.caption("condition"), words.sentence(item.condition)],
        ]}
      />
      {item.checks.length === 0 ? null : <Say said={checksSaid(item, words)} />}
    </>
  );
};

/** What all items share is said once; empty where they differ. */
const shared = (items: readonly Item[], of: (item: Item) => string): string =>
  new Set(items.map(of)).size === 1 ? of(items[0] as Item) : "";

const itemColumns = ({ words }: Paper, items: readonly Item[]): readonly Column<Item>[] => {
  const differing = [
    { caption: "construction", of: (item: Item) => item.construction },
    { caption: "material", of: (item: Item) => item.material ?? "" },
    { caption: "protection", of: (item: Item) => item.protection },
    { caption: "condition", of: (item: Item) => item.condition },
    { caption: "checks", of: (item: Item) => item.checks.join(" · ") },
  ] as const;
  const shown = differing.filter(({ of }) => shared(items, of) === "" && items.some((item) => of(item)));
  return [
    { header: words.caption("serial"), width: 90, align: "text", text: ({ serial }) => serial },
    { header: words.caption("identity"), width: 110, align: "text", text: ({ tag }) => tag },
    ...shown.map(({ caption, of }) => ({
      header: words.caption(caption),
      width: (405 - 200) / shown.length,
      align: "text" as const,
      text: of,
      said: (item: Item) => (caption === "checks" ? checksSaid(item, words) : words.sentence(of(item))),
    })),
  ];
};

/** Of several items: what they share in words, what tells them apart as a table. */
export const SeveralItems = ({ paper }: OnPaper) => {
  const { content, words } = paper;
  const items = itemsOf(content);
  const ofAll = [
    shared(items, ({ construction }) => construction),
    shared(items, ({ material }) => material ?? ""),
  ].filter(Boolean);
  const [first] = items;
  const sharesChecks = shared(items, ({ checks }) => checks.join(" · ")) !== "";
  const protection = shared(items, (item) => item.protection);
  const condition = shared(items, (item) => item.condition);
  return (
    <>
      {ofAll.map((text) => (
        <Say key={text} said={words.sentence(text)} />
      ))}
      {first && sharesChecks ? <Say said={checksSaid(first, words)} /> : null}
      <Facts
        of={[
          ...(protection ? [[words.caption("protection"), words.sentence(protection)] as const] : []),
          ...(condition ? [[words.caption("condition"), words.sentence(condition)] as const] : []),
        ]}
      />
      <View style={{ marginTop: 4 }}>
        <Table columns={itemColumns(paper, items)} rows={items} keyOf={({ tag }) => tag} />
      </View>
    </>
  );
};
