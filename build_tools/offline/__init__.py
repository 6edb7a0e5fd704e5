"""What lets the handbook open without a network: the offline worker, editions, the phone's icon."""
