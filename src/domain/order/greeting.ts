/** A message in small letters without the hello before it and the opening question mark, so that what follows can be looked at.
 *  @example withoutGreeting('Hi, where are my jigs?') //=> 'where are my jigs?' */
export const withoutGreeting = (text: string): string => text.trim().toLowerCase().replace(HELLO, '');

const HELLO = /^(?:(?:hi|hey|hello|ok|so|and|hola|oye|buenas|y)[,!.?\s]+)*¿?/;
