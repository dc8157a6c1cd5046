/**
 * How good the time of a stated step is, where it is not simply when the message was sent: `time-said` = in the driver's
 * words, or on the ticket; `held-up` = the message was sent, but came in much later, so that the phone had no network.
 */
export type StampTelling = 'time-said' | 'held-up';
