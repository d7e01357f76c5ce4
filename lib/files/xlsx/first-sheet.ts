import { withXml } from "../dcc/with-xml";
import { childrenNamed } from "../dcc/xml-element";
import { partText } from "./unpack-xlsx";

const relation = /<(?:\w+:)?sheet\b[^>]*?\s\w+:id\s*=\s*"([^"]{1,60})"[^>]*>/g;

/** Ids of the sheets in the order of their tabs, those a person can see. Their attribute has a namespace, which the tree leaves out. */
const visibleIds = (workbook: Uint8Array): readonly string[] =>
  [...partText(workbook).matchAll(relation)]
    .filter(([tag]) => !/\sstate\s*=\s*"(?:very)?hidden"/i.test(tag))
    .map(([, id]) => id ?? "");

const targetsOf = (relations: Uint8Array): ReadonlyMap<string, string> =>
  withXml(
    relations,
    () => new Map<string, string>(),
    (root) =>
      new Map(
        childrenNamed(root, "Relationship").map(({ attributes }) => [
          attributes.get("Id") ?? "",
          (attributes.get("Target") ?? "").replace(/^\/?(xl\/)?/, "").toLowerCase(),
        ]),
      ),
  );

/** The part that holds the first sheet a person sees; null where the workbook does not say. */
export const firstSheet = (parts: ReadonlyMap<string, Uint8Array>): Uint8Array | null => {
  const workbook = parts.get("xl/workbook.xml");
  const relations = parts.get("xl/_rels/workbook.xml.rels");
  if (!workbook || !relations) return null;
  const targets = targetsOf(relations);
  const target = visibleIds(workbook).map((id) => targets.get(id))[0];
  return target === undefined ? null : (parts.get(`xl/${target}`) ?? null);
};
