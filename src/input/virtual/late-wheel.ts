import type { BrakingIdea } from './braking-idea.ts';

/** The idea of a driver who turns in later, and whose foot waits for the hands. @param fromS from there on */
export function lateWheel(idea: BrakingIdea, fromS: number, lateS: number): BrakingIdea {
  const meantS = (timeS: number): number =>
    timeS < fromS ? timeS : Math.max(fromS, timeS - lateS);
  return {
    ...idea,
    levelAt: (timeS) => idea.levelAt(meantS(timeS)),
    steeringDegAt: (timeS) => idea.steeringDegAt(meantS(timeS)),
    brakeOffS: idea.brakeOffS + lateS,
  };
}
