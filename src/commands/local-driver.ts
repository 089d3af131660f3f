/** Name in the history of whoever always drives here. */
export const LOCAL_DRIVER = 'driver';
