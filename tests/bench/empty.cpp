// What starting any C++ program costs here.
int main() {}
