import { storeContract } from '../contracts/store.contract.ts';
import { memoryStore } from './memoryStore.ts';

storeContract('memory', async () => {
  const store = memoryStore({ count: 0 });
  return { store, failNext: store.failNext, reopened: async () => store.read() };
});
