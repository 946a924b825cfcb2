// Debian's wasm runtime was built with stack protection and asks its user for these two.
unsigned long __stack_chk_guard = 0x595e9fbdUL;
void __stack_chk_fail(void) { __builtin_trap(); }
