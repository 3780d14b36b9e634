// tests: the same random cases each time, for mutation testing: a fault is found or not by the tests, not by chance.

import fc from "fast-check";

fc.configureGlobal({ seed: 20_260_401 });
