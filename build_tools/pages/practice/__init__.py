"""The pages of practice: exercises, calls, and the record of what a learner can do."""
