import type { DccProblem } from "./dcc-certificate";
import { childNamed, childrenNamed, everyElement, listMembers, type XmlElement } from "./xml-element";

const problem = (element: XmlElement, message: string): DccProblem => ({
  code: "length",
  path: element.path,
  line: element.line,
  message,
});

const members = (element: XmlElement | null): number => (element ? listMembers(element.text).length : 0);

/** Lists of words in a column, e.g. labels, have the same rule as numbers: one for all, or one for each value. */
const listNames = /XMLList$/;

const insideColumn = (column: XmlElement): DccProblem[] => {
  const values = members(childNamed(column, "valueXMLList"));
  return [...everyElement(column)]
    .filter(
      (element) =>
        listNames.test(element.name) && element.children.length === 0 && element.name !== "valueXMLList",
    )
    .filter((element) => !element.path.includes("ultivariate") && !element.path.includes("Region"))
    .flatMap((element) => {
      const count = members(element);
      if (count === 1 || count === values) return [];
      return [
        problem(
          element,
          `${element.name} has ${count} members where the column has ${values} values; it needs ${values === 1 ? "one" : `${values}, or one for all`}. Ask the issuer which value belongs to which.`,
        ),
      ];
    });
};

/** How many rows a quantity has: 1 for a single value, null for what has no rows (words, complex). */
const rowsOf = (holder: XmlElement): number | null => {
  const column = childNamed(holder, "realListXMLList");
  if (column) return members(childNamed(column, "valueXMLList"));
  const list = childNamed(holder, "realList");
  if (list) return childrenNamed(list, "real").length;
  const inner = childNamed(holder, "hybrid") ?? childNamed(holder, "list");
  if (inner?.name === "list" && childNamed(inner, "real")) return childrenNamed(inner, "real").length;
  if (inner) return rowsOf(inner);
  const words = childNamed(holder, "charsXMLList");
  if (words) return members(words);
  return childNamed(holder, "real") || childNamed(holder, "constant") ? 1 : null;
};

const fits = (count: number | null, rows: number): boolean => count === null || count === 1 || count === rows;

const insideHybrid = (hybrid: XmlElement): DccProblem[] => {
  const columns = childrenNamed(hybrid, "realListXMLList");
  const rows = members(childNamed(columns[0] ?? null, "valueXMLList"));
  return columns.slice(1).flatMap((column) => {
    const count = members(childNamed(column, "valueXMLList"));
    return count === rows
      ? []
      : [
          problem(
            column,
            `This unit of the hybrid quantity has ${count} values, the first one ${rows}: both give the same values. Ask the issuer for the missing ones.`,
          ),
        ];
  });
};

/** Conformity and limits said of a quantity belong to its rows. */
const insideQuantity = (quantity: XmlElement): DccProblem[] => {
  const rows = rowsOf(quantity);
  if (rows === null) return [];
  const found: DccProblem[] = [];
  for (const statement of childrenNamed(childNamed(quantity, "measurementMetaData"), "metaData")) {
    for (const name of ["conformityXMLList", "validXMLList"]) {
      const list = childNamed(statement, name);
      if (list && !fits(members(list), rows))
        found.push(
          problem(
            list,
            `${name} has ${members(list)} members for ${rows} values. Ask the issuer which value each belongs to.`,
          ),
        );
    }
    for (const limit of childrenNamed(childNamed(statement, "data"), "quantity"))
      if (!fits(rowsOf(limit), rows))
        found.push(
          problem(
            limit,
            `This quantity has ${rowsOf(limit)} values and speaks of a column with ${rows}. Ask the issuer which value each belongs to.`,
          ),
        );
  }
  const relative = childNamed(quantity, "relativeUncertainty", "relativeUncertaintyXmlList", "valueXMLList");
  if (relative && !fits(members(relative), rows))
    found.push(
      problem(
        relative,
        `The relative uncertainty has ${members(relative)} values for ${rows} values. Ask the issuer for the missing ones.`,
      ),
    );
  return found;
};

/** The quantities of one table are its columns: the longest decides how many rows there are. */
const insideTable = (table: XmlElement): DccProblem[] => {
  const counted = childrenNamed(table, "quantity").map((quantity) => ({ quantity, rows: rowsOf(quantity) }));
  const rows = Math.max(0, ...counted.map((entry) => entry.rows ?? 0));
  const found = counted
    .filter((entry) => !fits(entry.rows, rows))
    .map((entry) =>
      problem(
        entry.quantity,
        `This quantity has ${entry.rows} values in a table of ${rows} rows. Ask the issuer which row each belongs to.`,
      ),
    );
  const moments = childNamed(table, "dateTimeXMLList");
  if (moments && rows > 0 && !fits(members(moments), rows))
    found.push(
      problem(moments, `dateTimeXMLList has ${members(moments)} members in a table of ${rows} rows.`),
    );
  return found;
};

const rules: Readonly<Record<string, (element: XmlElement) => DccProblem[]>> = {
  realListXMLList: insideColumn,
  relativeUncertaintyXmlList: insideColumn,
  hybrid: insideHybrid,
  quantity: insideQuantity,
};

/** Lists that belong together are of one length, or of length one, which then holds for all (D-SI 2.2.1). */
export const checkColumns = (root: XmlElement): readonly DccProblem[] =>
  [...everyElement(root)].flatMap((element) => {
    if (element.name === "list" && childrenNamed(element, "quantity").length > 0) return insideTable(element);
    return rules[element.name]?.(element) ?? [];
  });
