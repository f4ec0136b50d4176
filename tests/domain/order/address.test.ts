import { expect, test } from 'vitest';
import { placeInAddress } from '../../../src/domain/order/address.ts';

test.each([
  ['Sam Smith, 1 Main St, Columbus OH 43004', 'US-OH'],
  ['Sam Smith\n1 Main St\nColumbus, Ohio 43004-1234', 'US-OH'],
  ['ann bee, 2 oak rd, duluth mn 55802', 'US-MN'],
  ['Al Roe, 12345 Virginia Ave, Charleston, West Virginia 25301', 'US-WV'],
  ['Al Roe\n2 Oak Rd\nThunder Bay, Ontario\nCanada', 'CA-ON'],
  ['Al Roe, 2 Oak Rd, Thunder Bay ON P7B 5E1, phone 555 0100', 'CA-ON'],
  ['Al Roe, 2 Oak Rd, Ada, MN', 'US-MN'],
  ['Sam Fisher, 12 Washington Road, Columbus', undefined],
  ['Sam Fisher, Apt 12 or 14, in care of me, Oakville', undefined],
  ['Sam Fisher, 30100 Ohio Street, Springfield', undefined],
])('the address “%s” is in %s', (address, place) => expect(placeInAddress(address)).toBe(place));
