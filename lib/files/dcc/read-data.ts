import type { DccData, DccQuantity, DccStatement, DccTable } from "@/lib/domain/calibration/dcc-certificate";
import { columnsOf } from "./read-columns";
import { booleanOf, contactOf, isTrue, nameOf, refTypesOf, textOf, wordOf, wordsOf } from "./read-parts";
import { childNamed, childrenNamed, listMembers, placeOf, type XmlElement } from "./xml-element";

const nothing: DccData = { texts: [], quantities: [], tables: [] };

const kindOf = (element: XmlElement): DccStatement["kind"] => {
  const refTypes = refTypesOf(element).join(" ");
  if (
    childNamed(element, "conformity") ||
    childNamed(element, "conformityXMLList") ||
    /conformity/i.test(refTypes)
  )
    return "conformity";
  if (/recalibration/i.test(refTypes)) return "recalibration";
  if (/validityRange/i.test(refTypes)) return "validity-range";
  return childNamed(element, "traceable") || /traceab/i.test(refTypes) ? "traceability" : "other";
};

export const statementOf = (element: XmlElement): DccStatement => {
  const authority = childNamed(element, "respAuthority");
  return {
    kind: kindOf(element),
    refTypes: refTypesOf(element),
    name: nameOf(element),
    declaration: [
      ...textOf(childNamed(element, "declaration")),
      ...textOf(childNamed(element, "description")),
    ],
    norms: wordsOf(element, "norm"),
    references: wordsOf(element, "reference"),
    convention: wordOf(element, "convention"),
    traceable: booleanOf(element, "traceable"),
    valid: [...wordsOf(element, "valid"), ...listMembers(wordOf(element, "validXMLList") ?? "")].map(isTrue),
    conformity: [
      ...wordsOf(element, "conformity"),
      ...listMembers(wordOf(element, "conformityXMLList") ?? ""),
    ],
    date: wordOf(element, "date"),
    period: wordOf(element, "period"),
    authority: authority && contactOf(authority),
    refIds: listMembers(element.attributes.get("refId") ?? ""),
    data: dataOf(childNamed(element, "data")),
    place: placeOf(element),
  };
};

const remarksOf = (element: XmlElement): readonly DccStatement[] =>
  childrenNamed(childNamed(element, "measurementMetaData"), "metaData").map(statementOf);

/** Also for the quantities of items, methods and equipment, which have fewer parts. */
export const quantityOf = (element: XmlElement): DccQuantity => {
  const words = childNamed(element, "charsXMLList");
  const plain = childNamed(element, "noQuantity");
  const relative = childNamed(element, "relativeUncertainty");
  return {
    kind: words || plain ? "words" : childNamed(element, "hybrid") ? "hybrid" : "columns",
    refTypes: refTypesOf(element),
    name: nameOf(element),
    description: textOf(childNamed(element, "description")),
    columns: columnsOf(element),
    words: words ? listMembers(words.text) : textOf(plain).map(({ text }) => text),
    relativeUncertainty: relative ? (columnsOf(relative)[0] ?? null) : null,
    remarks: remarksOf(element),
    id: element.attributes.get("id") ?? null,
    place: placeOf(element),
  };
};

const tableOf = (element: XmlElement): DccTable => ({
  refTypes: refTypesOf(element),
  name: nameOf(element),
  description: textOf(childNamed(element, "description")),
  quantities: childrenNamed(element, "quantity").map(quantityOf),
  tables: childrenNamed(element, "list").map(tableOf),
  dateTimes: [...wordsOf(element, "dateTime"), ...listMembers(wordOf(element, "dateTimeXMLList") ?? "")],
  remarks: remarksOf(element),
  place: placeOf(element),
});

export const dataOf = (element: XmlElement | null): DccData =>
  element
    ? {
        texts: childrenNamed(element, "text").map(textOf),
        quantities: childrenNamed(element, "quantity").map(quantityOf),
        tables: childrenNamed(element, "list").map(tableOf),
      }
    : nothing;
