"""Weather from open services: adapters that know their questions and answers, one module that asks, pure merging."""
