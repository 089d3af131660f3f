/** Words a late call may come with. */
export const CALL_WORDS = ['defend', 'car inside', 'damp', 'yellow'] as const;

export type CallWord = (typeof CALL_WORDS)[number];
