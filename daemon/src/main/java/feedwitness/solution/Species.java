package feedwitness.solution;

import java.util.List;

/**
 * One kind of particle in solution and its parameters.
 *
 * @param charge elementary charges
 * @param formedFrom components it forms from, by index, and how many of each; itself for a
 *     component
 * @param logK of that formation
 * @param fade added to log10 of its activity coefficient per mol/kg of ionic strength: an effective
 *     pair that vanishes in strong solutions; 0 for none
 * @param mobility how it conducts; {@link Mobility#NONE} for neutral ones
 * @param bulk what it counts as in volume and viscosity, by index into the bulk solutes
 */
record Species(
    String name,
    int charge,
    List<Part> formedFrom,
    Equilibrium logK,
    double fade,
    Mobility mobility,
    List<Integer> bulk) {

  /** A component of a reaction and its stoichiometric number, negative where it is given off. */
  record Part(int component, int number) {}

  Species {
    formedFrom = List.copyOf(formedFrom);
    bulk = List.copyOf(bulk);
  }
}
