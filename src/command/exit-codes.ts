/** Faulty settings (EX_CONFIG of sysexits.h): a service manager must not restart the bot. */
export const EXIT_SETTINGS = 78;
