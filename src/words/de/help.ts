import type { help as en } from "../en/help.ts";
import type { Translated } from "../language.ts";

export const help: Translated<typeof en> = {
  intro: "Was die Wörter bedeuten und wie ein Plan entsteht.",
  words: "Was die Wörter bedeuten",
  what: (term) => `Was ist ${term}?`,
  asks: "Die Wörter:",
  terms: {
    tier: {
      name: "eine Reihe",
      text: "Facetten mit einem Armwinkel und einer Tiefe, rings um das Stück verteilt. Der Arm bleibt für die ganze Reihe stehen: Ein einmal verlassener Winkel ist nie wieder genau zu finden.",
    },
    arm: {
      name: "ein Armwinkel",
      text: "Wie weit der Arm mit dem Kittstock unter die Waagrechte sinkt. 0° schleift eine Facette am Äquator, 90° eine Fläche am Pol. Edelsteinschleifer zählen vom anderen Ende: Die Einstellungen können stattdessen diesen Schnittwinkel zeigen.",
    },
    stop: {
      name: "eine Raste",
      text: "Eine Kerbe des Teilrads. Ein Rad mit 96 dreht das Stück von Raste zu Raste um 3,75° und verteilt Facetten nur dann gleichmäßig, wenn ihre Zahl 96 teilt.",
    },
    depth: {
      name: "die Tiefe",
      text: "Wie weit die Fläche einer Facette unter der runden Oberfläche liegt, senkrecht zu ihr gemessen. Du sagst, wozu die Tiefe gut ist (gerade berühren, eine Kante von 2 mm, eine Breite), und sie wird ausgerechnet.",
    },
    meet: {
      name: "ein Treffen",
      text: "Nachbarn treffen sich, wenn sie eine Kante teilen oder sich in einem Punkt berühren. Sonst bleibt ein Streifen runder Haut: eine Lücke, mit ihrer Breite daneben.",
    },
    corner: {
      name: "eine Ecke",
      text: "Drei oder mehr Facetten, die in einem Punkt zusammenkommen. Ein voller Punkt zeigt sie; ein Punkt mit Schweif sagt, um wie viel sie sich verfehlen.",
    },
    skin: {
      name: "die Haut",
      text: "Die runde Oberfläche, die zwischen den Facetten bleibt, glatt, wie sie aus der Flamme kam.",
    },
    dop: {
      name: "ein Kittstock",
      text: "Der Stab, auf den das Stück gekittet ist. Wo er sitzt, lässt sich nichts schleifen, deshalb kommt die Rückseite nach dem Umsetzen auf einen anderen Kittstock dran.",
    },
    mark: {
      name: "der Tintenstrich",
      text: "Die blaue Linie: ein Strich, den du vor dem ersten Schliff auf die Haut malst. Nach ihm wird das Stück wieder richtig gedreht, wenn es auf einen anderen Kittstock gekittet ist. Wo er steht, wird unter Stück und unter Einrichten gesagt.",
    },
    tolerance: {
      name: "die Toleranz",
      text: "Wie viel ein Treffen danebenliegen darf, bevor es als verfehlt gilt: 0,05 mm, wenn du nichts anderes sagst, etwa ein dünnes Haar.",
    },
  },
  pictures: {
    tier: "Eine Kugel mit einem Ring aus Facetten.",
    arm: "Ein Arm, der sich von der Waagrechten zur Scheibe neigt.",
    stop: "Ein Rad mit Kerben, eine davon markiert.",
    depth: "Ein Halbkreis mit einer Fläche und dem Abstand von der Rundung zur Fläche.",
    meet: "Drei Paare von Facetten: mit gemeinsamer Kante, sich berührend, getrennt.",
    corner: "Drei Facetten, die in einem Punkt zusammenkommen, und drei, die sich knapp verfehlen.",
    skin: "Eine Kugel mit zwei Flächen; was von der Rundung bleibt, ist kräftig gezeichnet.",
    dop: "Eine Kugel auf einem Stab.",
    mark: "Eine Kugel mit einem kurzen Strich über ihre Mitte.",
    tolerance: "Zwei Kanten, ein Haar voneinander entfernt.",
  },
  guide: {
    title: "Ein kurzer Rundgang",
    again: "Rundgang um die Werkbank",
    next: "Weiter",
    back: "Zurück",
    leave: "Beenden",
    done: "Getan.",
    skip: "Überspringen",
    close: "Schließen",
    place: (step, all) => `${step} von ${all}`,
    steps: {
      turn: {
        title: "Dreh das Stück",
        text: "Zieh die Murmel mit dem Finger oder der Maus. Ein Ring von Facetten ist schon geschliffen.",
      },
      read: {
        title: "Lies das Rezept",
        text: "Jede Reihe ist ein Satz; darunter steht, was von ihr wahr ist. Drück auf den markierten oder auf eine Facette am Stück.",
      },
      change: {
        title: "Ändere einen Winkel",
        text: "Drück auf die markierte Zahl, schreib 40 und Eingabe. Die Facetten berühren sich weiter: die Zeile über dem Rezept sagt es.",
      },
      undo: {
        title: "Nimm es zurück",
        text: "Rückgängig holt es zurück, Schritt für Schritt, so weit du willst.",
      },
      look: {
        title: "Sieh, wie es aussehen wird",
        text: "Ansicht verfolgt Licht durch das Glas: dasselbe Stück im Licht eines Fensters. Geh dorthin.",
      },
      bench: {
        title: "Nimm es mit an die Bank",
        text: "Werkbank sagt, was Arm und Rad für jede Facette brauchen, und druckt ein Blatt. Geh dorthin.",
      },
    },
    end: "Das ist alles. Dein eigener Plan beginnt im Menü unter Neuer Plan; er wird auf diesem Gerät aufgehoben, während du arbeitest.",
  },
};
