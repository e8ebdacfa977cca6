// Loaded before all programs (LD_PRELOAD, by the test preset) where leaks are looked for: no library is let go before the
// end. The graphics driver's leaks can then be told by its name (tests/leaks.supp); else they stand there without one.
extern "C" int dlclose(void* /*library*/) { return 0; }
