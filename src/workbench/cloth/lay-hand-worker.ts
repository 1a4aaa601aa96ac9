import { handWork, type ToHand } from '../../layout/index.ts';

// A message to oneself lets those that wait be heard first, without the least delay that timers have.
const { port1, port2 } = new MessageChannel();
let next: () => void = () => undefined;
port1.onmessage = () => next();

const hear = handWork(
  (message) => self.postMessage(message),
  () => performance.now(),
  (then) => {
    next = then;
    port2.postMessage(null);
  },
);
self.addEventListener('message', (event: MessageEvent<ToHand>) => hear(event.data));
