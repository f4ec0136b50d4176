import { expect, test } from 'vitest';
import { addressIn, bareAddress } from '../../../src/domain/order/address.ts';

test.each([
  'Sam Smith, 12 Main St, Dayton OH 45402',
  'Sam Smith\n14 Main St\nDayton, OH 45402',
  'Sam Smith\n400 White Oak Dr\nBall Ground, GA 30107',
  'Pat Lee\nUnit 4, 12 King St W\nToronto ON M5H 1A1',
  'Ana Ruiz\nCalle Blanca 7\nDayton OH 45402',
  'no, 2 Elm St, Dayton OH 45402',
])('“%s” is a whole address', (text) => {
  expect(addressIn(text)).toBe('whole');
});

test.each([
  'Sam, 1 Main St, Columbus',
  'General Delivery, Ely, Minnesota',
  'PO Box 12, Ely MN',
  'Pat Shore, 12 Shore Road, Duluth',
  'Sam Smith 12 Main St Dayton Ohio',
])('“%s” may be an address', (text) => {
  expect(addressIn(text)).toBe('likely');
});

test.each([
  'I will send it later',
  'I forgot something',
  'Oops I wanted 30',
  'see you friday',
  'Please make the eyes clean',
  'no thanks, cancel it',
  'like last time',
  'make that 30',
  'another 20 of those',
  'como la última vez',
  '24 1/8 ball white size 1',
])('“%s” is no address', (text) => {
  expect(addressIn(text)).toBeNull();
});

test('words that lead to an address are no part of it', () => {
  expect(bareAddress('no, 2 Elm St, Dayton OH 45402')).toBe('2 Elm St, Dayton OH 45402');
  expect(bareAddress('my new address is 14 Main St, Dayton OH 45402')).toBe('14 Main St, Dayton OH 45402');
  expect(bareAddress('please send it to Sam Smith, 1 Main St, Ely MN')).toBe('Sam Smith, 1 Main St, Ely MN');
  expect(bareAddress('Norma Noble, 1 Main St')).toBe('Norma Noble, 1 Main St');
});
