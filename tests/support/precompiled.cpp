// Carries the precompiled header that every test program reuses; main.cpp must not (it includes it its own
// way).
