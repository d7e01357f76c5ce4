import type { DccCertificate } from "@/lib/domain/calibration/dcc-certificate";
import { childNamed, everyElement, placeOf, type XmlElement } from "./xml-element";

const notInterpreted: Readonly<Record<string, string>> = {
  formula: "a formula",
  xml: "XML of another kind",
  comment: "a comment of the issuer",
  complex: "a complex quantity",
  listBivariateUnc: "a bivariate uncertainty",
  complexList: "a list of complex quantities",
  complexListXMLList: "a list of complex quantities",
  measurementUncertaintyMultivariateXMLList: "a multivariate uncertainty",
  ellipsoidalRegion: "an ellipsoidal coverage region",
  rectangularRegion: "a rectangular coverage region",
  ellipsoidalRegionXMLList: "an ellipsoidal coverage region",
  rectangularRegionXMLList: "a rectangular coverage region",
  positionCoordinates: "coordinates of a place",
  equipmentClass: "an equipment class",
  owner: "the owner",
  usedMethodQuantities: "quantities of a method",
  measuringEquipmentQuantities: "quantities of an equipment",
  installedSoftware: "software of an equipment",
  installedSoftwares: "software of the item",
  nonSIUnit: "a unit outside the SI",
};

/** Foreign content, e.g. a comment's own XML, is told once, by the element that holds it. */
function* outermost(element: XmlElement): Generator<XmlElement> {
  if (Object.hasOwn(notInterpreted, element.name)) yield element;
  else for (const child of element.children) yield* outermost(child);
}

export const setAsideOf = (root: XmlElement): DccCertificate["setAside"] =>
  [...outermost(root)].map((element) => {
    const what = notInterpreted[element.name] ?? element.name;
    return {
      what: element.name === "nonSIUnit" ? `${what}: ${element.text.trim()}` : what,
      place: placeOf(element),
    };
  });

export const embeddedFilesOf = (root: XmlElement): DccCertificate["embeddedFiles"] =>
  [...everyElement(root)]
    .filter((element) => childNamed(element, "dataBase64") !== null)
    .map((element) => ({
      fileName: childNamed(element, "fileName")?.text.trim() ?? "",
      mimeType: childNamed(element, "mimeType")?.text.trim() ?? "",
      place: placeOf(element),
    }));
