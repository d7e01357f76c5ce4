/** Object identifiers of what a seal is made of, by the RFC that gives them (numbers from memory, held by openssl in the tests). */
export const oid = {
  /** RFC 5652 */
  data: "1.2.840.113549.1.7.1",
  signedData: "1.2.840.113549.1.7.2",
  contentType: "1.2.840.113549.1.9.3",
  messageDigest: "1.2.840.113549.1.9.4",
  /** RFC 5035 */
  signingCertificateV2: "1.2.840.113549.1.9.16.2.47",
  /** RFC 2634 */
  signingCertificate: "1.2.840.113549.1.9.16.2.12",
  /** RFC 3161 */
  timestampToken: "1.2.840.113549.1.9.16.2.14",
  timestampInfo: "1.2.840.113549.1.9.16.1.4",
  timeStamping: "1.3.6.1.5.5.7.3.8",
  /** RFC 8017, RFC 5758 */
  sha256WithRsa: "1.2.840.113549.1.1.11",
  rsa: "1.2.840.113549.1.1.1",
  sha256WithEcdsa: "1.2.840.10045.4.3.2",
  sha256: "2.16.840.1.101.3.4.2.1",
  sha384: "2.16.840.1.101.3.4.2.2",
  sha512: "2.16.840.1.101.3.4.2.3",
  /** X.520 */
  commonName: "2.5.4.3",
  /** RFC 5280 */
  basicConstraints: "2.5.29.19",
  keyUsage: "2.5.29.15",
  extendedKeyUsage: "2.5.29.37",
} as const;
