/**
 * What may stand where in a certificate: the element structure of the DCC, read from the published schema 3.3.0
 * (https://ptb.de/dcc/v3.3.0/dcc.xsd) and written in our own short notation. Older versions hold a subset of it.
 *
 * Each type lists its children as `name:type`; `?` none or one, `*` any number, `+` one or more, nothing: exactly one.
 * A type with a capital is another line of the table; one in small letters is a kind of value (`value-kinds.ts`).
 * `si.` marks names of the D-SI, `ds.` XML signatures. The order is left to the schema: no meaning hangs on it.
 */
export const dccModel: Readonly<Record<string, string>> = {
  Certificate:
    "administrativeData:Administrative measurementResults:Measurement comment:anything? document:Bytes? ds.Signature:anything*",
  Administrative:
    "dccSoftware:Softwares refTypeDefinitions:Vocabularies? coreData:Core items:Items calibrationLaboratory:Laboratory respPersons:Persons customer:Contact statements:Statements?",
  Softwares: "software:Software+",
  Software: "name:Text release:word type:software? description:Rich?",
  Vocabularies: "refTypeDefinition:Vocabulary+",
  Vocabulary: "name:Text description:Rich? namespace:word link:uri release:word? value:word? procedure:word?",
  Core: "countryCodeISO3166_1:country usedLangCodeISO639_1:language+ mandatoryLangCodeISO639_1:language+ uniqueIdentifier:identifier identifications:Identifications? receiptDate:date? beginPerformanceDate:date endPerformanceDate:date performanceLocation:location issueDate:date? reportAmendedSubstituted:Change? previousReport:Hash?",
  Change: "typeOfChange:change replacedUniqueIdentifier:identifier",
  EquipmentClass: "reference:word classID:word link:uri?",
  Items:
    "name:Text? equipmentClass:EquipmentClass* description:Rich? owner:Contact? manufacturer:Party? identifications:Identifications? item:Item+",
  Item: "name:Text equipmentClass:EquipmentClass* description:Rich? owner:Contact? installedSoftwares:Softwares? manufacturer:Party? model:word? identifications:Identifications itemQuantities:ItemQuantities? subItems:Items?",
  ItemQuantities: "itemQuantity:Primitive+",
  Identifications: "identification:Identification+",
  Identification: "issuer:issuer value:identifier name:Text?",
  Laboratory:
    "calibrationLaboratoryCode:word? contact:Contact cryptElectronicSeal:boolean? cryptElectronicSignature:boolean? cryptElectronicTimeStamp:boolean?",
  Persons: "respPerson:Person+",
  Person:
    "person:Party description:Rich? role:word? mainSigner:boolean? cryptElectronicSeal:boolean? cryptElectronicSignature:boolean? cryptElectronicTimeStamp:boolean?",
  Contact: "name:Text eMail:word? phone:word? fax:word? link:uri? location:Address descriptionData:Bytes?",
  Party: "name:Text eMail:word? phone:word? fax:word? link:uri? location:Address? descriptionData:Bytes?",
  Address:
    "city:word* countryCode:country* postCode:word* postOfficeBox:word* state:word* street:word* streetNo:word* further:Rich* positionCoordinates:Position*",
  Position:
    "positionCoordinateSystem:word reference:word? declaration:Rich? positionCoordinate1:si.Real positionCoordinate2:si.Real positionCoordinate3:si.Real? link:uri?",
  Statements: "statement:Statement+",
  MetaDatas: "metaData:Statement+",
  Statement:
    "name:Text? description:Rich? countryCodeISO3166_1:country* convention:word? traceable:boolean? norm:word* reference:word* link:uri* declaration:Rich? valid:boolean? validXMLList:booleans? date:date? period:duration? respAuthority:Contact? conformity:conformity? conformityXMLList:conformities? data:Data? nonSIDefinition:word? nonSIUnit:word? location:Address?",
  Measurement:
    "usedMethods:Methods? usedSoftware:Softwares? measuringEquipments:Equipments? influenceConditions:Conditions? measurementMetaData:MetaDatas? measurementResult:Group+",
  Group:
    "name:Text description:Rich? usedMethods:Methods? usedSoftware:Softwares? measuringEquipments:Equipments? influenceConditions:Conditions? results:Results measurementMetaData:MetaDatas?",
  Methods: "usedMethod:Method+",
  Method:
    "name:Text description:Rich? norm:word* reference:word* link:uri* usedMethodQuantities:MethodQuantities?",
  MethodQuantities: "usedMethodQuantity:Primitive+",
  Equipments:
    "name:Text? equipmentClass:EquipmentClass* description:Rich? owner:Contact? identifications:Identifications? measuringEquipment:Equipment+",
  Equipment:
    "name:Text equipmentClass:EquipmentClass* description:Rich? certificate:Hash? manufacturer:Party? model:word? identifications:Identifications? measuringEquipmentQuantities:EquipmentQuantities? installedSoftware:Softwares?",
  EquipmentQuantities: "measuringEquipmentQuantity:Primitive+",
  Conditions: "influenceCondition:Condition+",
  Condition: "name:Text description:Rich? status:status? certificate:Hash? data:Data",
  Results: "result:Result+",
  Result: "name:Text description:Rich? data:Data",
  Data: "text:Rich* formula:Formula* byteData:Bytes* xml:anything* quantity:Quantity* list:Table*",
  Table:
    "name:Text? description:Rich? dateTime:dateTime? dateTimeXMLList:dateTimes? list:Table* quantity:Quantity* usedMethods:Methods? usedSoftware:Softwares? measuringEquipments:Equipments? influenceConditions:Conditions? measurementMetaData:MetaDatas?",
  Quantity:
    "name:Text? description:Rich? noQuantity:Rich? charsXMLList:words? si.real:si.Real? si.list:si.List? si.hybrid:si.Hybrid? si.complex:anything? si.constant:si.Constant? si.realListXMLList:si.Column? si.complexListXMLList:anything? relativeUncertainty:Relative? usedMethods:Methods? usedSoftware:Softwares? measuringEquipments:Equipments? influenceConditions:Conditions? measurementMetaData:MetaDatas?",
  Primitive:
    "name:Text? description:Rich? noQuantity:Rich? charsXMLList:words? si.real:si.Real? si.hybrid:si.Hybrid? si.complex:anything? si.constant:si.Constant? si.realListXMLList:si.Column? si.complexListXMLList:anything?",
  Relative: "relativeUncertaintyXmlList:si.Column? relativeUncertaintySingle:si.Real?",
  Hash: "referral:Text referralID:identifier procedure:word value:identifier description:Rich? inValidityRange:boolean? traceable:boolean? linkedReport:Hash?",
  Text: "content:content+",
  Rich: "name:Text? content:content* file:Bytes* formula:Formula*",
  Bytes: "name:Text? description:Rich? fileName:word mimeType:word dataBase64:base64",
  Formula: "latex:content? mathml:anything?",
};

/** Types of which at least one, or exactly one, of the children named must be there. */
export const dccChoices: Readonly<
  Record<string, { readonly atLeast: 0 | 1; readonly atMost: number; readonly of: readonly string[] }[]>
> = {
  Quantity: [
    {
      atLeast: 1,
      atMost: 1,
      of: [
        "noQuantity",
        "charsXMLList",
        "real",
        "list",
        "hybrid",
        "complex",
        "constant",
        "realListXMLList",
        "complexListXMLList",
      ],
    },
  ],
  Primitive: [
    {
      atLeast: 1,
      atMost: 1,
      of: [
        "noQuantity",
        "charsXMLList",
        "real",
        "hybrid",
        "complex",
        "constant",
        "realListXMLList",
        "complexListXMLList",
      ],
    },
  ],
  Data: [
    {
      atLeast: 1,
      atMost: Number.POSITIVE_INFINITY,
      of: ["text", "formula", "byteData", "xml", "quantity", "list"],
    },
  ],
  Table: [
    { atLeast: 1, atMost: Number.POSITIVE_INFINITY, of: ["list", "quantity"] },
    { atLeast: 0, atMost: 1, of: ["dateTime", "dateTimeXMLList"] },
  ],
  Address: [
    {
      atLeast: 1,
      atMost: Number.POSITIVE_INFINITY,
      of: [
        "city",
        "countryCode",
        "postCode",
        "postOfficeBox",
        "state",
        "street",
        "streetNo",
        "further",
        "positionCoordinates",
      ],
    },
  ],
  Statement: [
    { atLeast: 0, atMost: 1, of: ["valid", "validXMLList"] },
    { atLeast: 0, atMost: 1, of: ["conformity", "conformityXMLList"] },
  ],
  Relative: [{ atLeast: 1, atMost: 1, of: ["relativeUncertaintyXmlList", "relativeUncertaintySingle"] }],
  Formula: [{ atLeast: 1, atMost: 1, of: ["latex", "mathml"] }],
};
