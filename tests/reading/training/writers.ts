/**
 * Writers whose messages only measure: nobody reads them while adding words, and nothing is learned from them. Single
 * messages of many people (r), danger and orders with their look-alikes (s), numbers and questions (t), and the chat
 * logs of two crews over eight days (u, v).
 */
export const MEASURING: readonly string[] = ['r', 's', 't', 'u', 'v', 'ma', 'mb', 'cn', 'cq'];
