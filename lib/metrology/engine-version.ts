/** Stored with each result. Raise it whenever any numeric result could change, in any digit. */
export const engineVersion = "2.1.0";
