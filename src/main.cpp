// Command line -> run -> exit status.
int main() { return 2; }
