// oxlint-disable-next-line typescript/consistent-type-assertions -- not needed
export const a = 1;
