Console.WriteLine("dyepath");
