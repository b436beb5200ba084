"""Tools that make and judge the demonstration builds: numpy only, nothing of the program."""
